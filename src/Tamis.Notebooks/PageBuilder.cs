using Tamis.Views;

namespace Tamis.Notebooks;

/// <summary>Makes the content of a page from a notebook that was run.</summary>
public static class PageBuilder
{
    /// <summary>The page's content: the notebook's text, what its cells showed, and its code, folded away but for the teacher.</summary>
    /// <remarks>HTML that a cell showed stands as it is: the kit's views escape what they put in. Everything else is escaped here.
    /// The page of a notebook that failed is only its title and what must be mended, because half a page misleads.</remarks>
    public static Html Content(NotebookRun run) => run.Failure is { } failure ? Stopped(run.Notebook, failure) : Whole(run.Notebook);

    /// <summary>Why a page could not be made, for whoever can mend it: one sentence a line of the message.</summary>
    public static Html Stop(CellFailure failure)
    {
        var sentences = failure.Message.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        return Html.Join(sentences.Select(sentence => Html.Of($"<p class=\"stop\"><b>Mend:</b> {sentence}</p>\n")));
    }

    private static Html Stopped(NotebookFile notebook, CellFailure failure) =>
        Html.Of($"<h1>{notebook.Title}</h1>\n<p class=\"lead\">This page could not be made from the sheets as they are. Nothing of it is shown, because half of it would mislead.</p>\n{Stop(failure)}<p class=\"from\">{notebook.Name}, {failure.Where}</p>\n");

    private static Html Whole(NotebookFile notebook)
    {
        List<Html> parts = [];
        List<string> code = [];
        var isTeacher = notebook.Reader == Reader.Teacher;
        var isInSection = false;
        foreach (var cell in notebook.Cells)
        {
            if (cell.IsCode)
            {
                if (IsSetup(cell)) continue;
                code.Add(cell.Text);
                var shown = Html.Join(cell.Outputs.Select(Show));
                // Who reads the code reads it before what it shows; for everybody else it waits at the foot of its section.
                if (isTeacher && !shown.IsEmpty) TakeCode();
                parts.Add(shown);
                continue;
            }
            var isSection = cell.Text.StartsWith("## ", StringComparison.Ordinal);
            if (isTeacher || isSection) TakeCode();
            if (isSection) parts.Add(Html.Of($"{(isInSection ? Html.Of($"</section>\n") : Html.Empty)}<section>\n"));
            isInSection |= isSection;
            parts.Add(MarkdownView.Render(cell.Text));
        }
        TakeCode();
        if (isInSection) parts.Add(Html.Of($"</section>\n"));
        return Html.Join(parts);

        void TakeCode()
        {
            if (code.Count > 0) parts.Add(Code(string.Join("\n\n", code), isTeacher));
            code.Clear();
        }
    }

    private static bool IsSetup(NotebookCell cell) => cell.Text.Contains("Notebook.Init(", StringComparison.Ordinal);

    private static Html Code(string text, bool isOpen) =>
        Html.Of($"<details class=\"code\"{(isOpen ? Html.Of($" open") : Html.Empty)}><summary>Code</summary><pre tabindex=\"0\"><code>{text.Trim()}</code></pre></details>\n");

    private static Html Show(CellOutput output) => output switch
    {
        StreamOutput stream => Text(stream.Text),
        DisplayOutput display when display["text/html"] is { } markup => Html.Trusted(NotebookSetup.Unframed(markup)),
        DisplayOutput display => Text(display["text/plain"] ?? display.Data.Select(form => form.Value).FirstOrDefault("")),
        _ => Html.Empty,
    };

    private static Html Text(string text) => text.Trim().Length == 0 ? Html.Empty : Html.Of($"<pre tabindex=\"0\">{text.TrimEnd()}</pre>\n");
}
