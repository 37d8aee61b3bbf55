using System.CommandLine;
using Tamis.Desserts;
using Tamis.Labels;
using Tamis.Tables;
using Tamis.Views;

namespace Tamis.App.Label;

/// <summary>The command <c>label-drawing</c>: a label at its real size for print, as SVG, as a page and, with a browser on this computer, as PDF.</summary>
internal static class LabelDrawingCommand
{
    /// <summary>The command with its arguments.</summary>
    public static Command Create()
    {
        var folder = new Argument<string>("FOLDER") { Description = "The dessert folder; its store is the folder store in it or beside it." };
        var market = new Argument<string>("MARKET") { Description = "A country of the rows market in dessert.csv, such as IE; several for one pack in quotation marks, parted by semicolons: \"IE; FR\"." };
        var trial = new Option<string?>("--trial") { Description = "The trial; the ordered one where it is left out.", HelpName = "TRIAL" };
        var output = new Option<string?>("--out") { Description = "Write the files to this folder. Default: to-print, in the dessert folder.", HelpName = "FOLDER" };
        var day = RulesDay.Create();
        var command = new Command("label-drawing", "Draw the label of a pack in millimetres, for print. A draft is not written; what is missing is said.") { folder, market, trial, output, day };
        command.SetDeed(arguments => Task.FromResult(Run(arguments.GetRequiredValue(folder), arguments.GetRequiredValue(market), arguments.GetValue(trial), arguments.GetValue(output), Console.Out, RulesDay.Of(arguments.GetValue(day)))));
        return command;
    }

    /// <summary>Draws the label; 1 where it is a draft, a cell must be mended or the browser that is named cannot be started, and then nothing is written.</summary>
    public static int Run(string folder, string market, string? trial, string? output, TextWriter writer, DateOnly? day = null, Func<PrintBrowser?>? browserOf = null) => CommandEnding.Guarded(writer, () =>
    {
        var dessert = Dessert.Open(folder).ByRulesOf(day);
        var name = trial ?? dessert.Candidate;
        IReadOnlyList<LabelDrawing> drawings = [];
        IReadOnlyList<string> remarks = [];
        var cells = LabelCells.Problems(dessert, name, LabelCells.RulesOf(dessert, name, market), () => drawings = DessertLabel.DrawnFaces(dessert, name, market), () => remarks = LabelRemarks.OfMarket(dessert, name, market));
        if (cells.Count > 0) throw new TableException(cells);
        foreach (var drawing in drawings)
        {
            if (drawing.Content.Face is not null) writer.WriteLine($"{drawing.FaceInWords}:");
            foreach (var attempt in drawing.Attempts) writer.WriteLine(attempt);
        }
        foreach (var remark in remarks.Concat(drawings.SelectMany(drawing => drawing.Remarks)).Distinct()) writer.WriteLine($"Look at: {remark}");
        if (drawings.Any(drawing => drawing.IsDraft))
        {
            foreach (var reason in drawings.SelectMany(drawing => drawing.DraftReasons).Distinct()) writer.WriteLine($"Stops print: {reason}");
            writer.WriteLine("A draft: nothing was written.");
            return 1;
        }
        var target = Path.GetFullPath(output ?? Path.Combine(dessert.Folder, "to-print"));
        var browser = (browserOf ?? PrintBrowser.OfThisComputer)();
        // All faces are made before the first is written: a browser that cannot be started leaves no half of a label behind.
        Face[] faces = [.. drawings.Select(drawing => (drawing, Page: LabelPrint.Page(drawing)))
            .Select(each => new Face(Path.Combine(target, LabelPrint.FileName(name, market, each.drawing.Content.Face)), LabelPrint.Svg(each.drawing), each.Page, browser?.Pdf(each.Page)))];
        foreach (var face in faces) Write(face, writer);
        if (day is not null) writer.WriteLine($"Drawn{RulesDay.InWords(day)}.");
        writer.WriteLine("Print at 100 %, without fitting to the paper. A competent person signs; local rules come first.");
        return 0;
    });

    private sealed record Face(string Path, string Svg, string Page, byte[]? Pdf);

    private static void Write(Face face, TextWriter writer)
    {
        TextFile.WriteWhole(face.Path + ".svg", face.Svg);
        TextFile.WriteWhole(face.Path + ".html", face.Page);
        if (face.Pdf is { } pdf) TextFile.WriteWhole(face.Path + ".pdf", pdf);
        writer.WriteLine($"Written: {face.Path}.svg and {face.Path}.html");
        writer.WriteLine(face.Pdf is not null
            ? $"Written: {face.Path}.pdf"
            : $"No PDF was made: it takes Chromium, Chrome or Edge on this computer (or name one in {PrintBrowser.Variable}). Open {face.Path}.html in any browser and print it; its page has the size of the face.");
    }
}
