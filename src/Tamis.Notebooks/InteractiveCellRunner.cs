using System.Reflection;
using System.Text;
using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis.Scripting;
using Microsoft.DotNet.Interactive;
using Microsoft.DotNet.Interactive.Commands;
using Microsoft.DotNet.Interactive.CSharp;
using Microsoft.DotNet.Interactive.Events;
using Microsoft.DotNet.Interactive.Formatting;

namespace Tamis.Notebooks;

/// <summary>Runs cells with the C# kernel of .NET Interactive. No other class names that package, whose upstream is archived.</summary>
public sealed partial class InteractiveCellRunner : ICellRunner
{
    // Scripts carry no line numbers unless their options ask for debug information; the kernel offers no way to
    // ask but this field. The package's line is final, and a test fails the day the field is not there.
    private static readonly FieldInfo ScriptOptionsField =
        typeof(CSharpKernel).GetField("_scriptOptions", BindingFlags.Instance | BindingFlags.NonPublic)
        ?? throw new MissingFieldException(nameof(CSharpKernel), "_scriptOptions");

    private readonly CSharpKernel _kernel;
    private readonly string _folder;

    /// <summary>Starts a kernel.</summary>
    /// <param name="folder">The notebook's folder, which is taken out of what an error says.</param>
    public InteractiveCellRunner(string folder)
    {
        // Formatters that an earlier notebook registered belong to the process; each notebook starts without them.
        Formatter.ResetToDefault();
        // The kit's views say themselves that they are HTML; everything else is shown as plain text, not as a property tree.
        Formatter.DefaultMimeType = PlainTextFormatter.MimeType;
        _folder = Path.TrimEndingDirectorySeparator(folder) + Path.DirectorySeparatorChar;
        _kernel = new CSharpKernel().UseKernelHelpers();
        Options = Options.WithEmitDebugInformation(true).WithFileEncoding(Encoding.UTF8);
    }

    private ScriptOptions Options
    {
        get => (ScriptOptions)ScriptOptionsField.GetValue(_kernel)!;
        set => ScriptOptionsField.SetValue(_kernel, value);
    }

    /// <inheritdoc/>
    public async Task<IReadOnlyList<CellOutput>> RunAsync(string code, int cell, CancellationToken cancel)
    {
        Options = Options.WithFilePath($"cell {cell}");
        var result = await _kernel.SendAsync(new SubmitCode(WithOwnAssemblies(code)), cancel).ConfigureAwait(false);
        List<CellOutput> outputs = [];
        foreach (var happened in result.Events)
        {
            switch (happened)
            {
                case StandardOutputValueProduced written:
                    Write(outputs, "stdout", Plain(written));
                    break;
                case StandardErrorValueProduced written:
                    Write(outputs, "stderr", Plain(written));
                    break;
                // An update comes under another id than what it updates, so both are shown, in order.
                case DisplayedValueProduced or DisplayedValueUpdated:
                    Show(outputs, (DisplayEvent)happened, isResult: false);
                    break;
                case ReturnValueProduced returned:
                    Show(outputs, returned, isResult: true);
                    break;
                case CommandFailed failed:
                    outputs.Add(new ErrorOutput(Failure(failed, cell)));
                    return outputs;
            }
        }
        return outputs;
    }

    /// <inheritdoc/>
    public void Dispose() => _kernel.Dispose();

    /// <summary>The cell with references to the kit's own assemblies pointing to the ones that run here.</summary>
    /// <remarks>The setup cell names the build beside the notebooks for Jupyter. Here the same assemblies are loaded
    /// already, whatever configuration they were built in, and a cell has to be compiled against what runs.</remarks>
    private static string WithOwnAssemblies(string code) => ReferenceLine().Replace(code, line =>
    {
        var own = Path.Combine(AppContext.BaseDirectory, Path.GetFileName(line.Groups["file"].Value));
        return File.Exists(own) ? $"#r \"{own}\"" : line.Value;
    });

    private static void Write(List<CellOutput> outputs, string stream, string text)
    {
        if (outputs is [.., StreamOutput last] && last.Stream == stream) outputs[^1] = last with { Text = last.Text + text };
        else outputs.Add(new StreamOutput(stream, text));
    }

    private static string Plain(DisplayEvent shown) => shown.FormattedValues.FirstOrDefault()?.Value.ReplaceLineEndings("\n") ?? "";

    // A view of nothing shows nothing.
    private static void Show(List<CellOutput> outputs, DisplayEvent shown, bool isResult)
    {
        var forms = shown.FormattedValues.Select(form => KeyValuePair.Create(form.MimeType, form.Value.ReplaceLineEndings("\n"))).ToArray();
        if (Array.Exists(forms, form => form.Value.Length > 0)) outputs.Add(new DisplayOutput(forms, isResult));
    }

    private CellFailure Failure(CommandFailed failed, int cell)
    {
        if (failed.Exception is CodeSubmissionCompilationErrorException)
        {
            var place = CompilerPlace().Match(failed.Message);
            return new(cell, place.Success ? Number(place) : null, "CompilationError", CompilerPlace().Replace(failed.Message, "").Replace(_folder, "", StringComparison.Ordinal).Trim());
        }
        var cause = failed.Exception;
        while (cause is TargetInvocationException or AggregateException && cause.InnerException is { } inner) cause = inner;
        var frame = StackPlace().Matches(cause?.StackTrace ?? "").FirstOrDefault(match => match.Groups["cell"].Value == $"{cell}");
        var message = (cause?.Message ?? failed.Message).Replace(_folder, "", StringComparison.Ordinal);
        return new(cell, frame is null ? null : Number(frame), cause?.GetType().Name ?? "Error", message.ReplaceLineEndings("\n"));
    }

    private static int Number(Match place) => int.Parse(place.Groups["line"].Value, System.Globalization.CultureInfo.InvariantCulture);

    [GeneratedRegex("""^\s*#r\s+"(?<file>[^":]+\.dll)"\s*$""", RegexOptions.Multiline)]
    private static partial Regex ReferenceLine();

    [GeneratedRegex(@"[^\r\n(]*cell \d+\((?<line>\d+),\d+\): ")]
    private static partial Regex CompilerPlace();

    [GeneratedRegex(@"in [^\r\n]*cell (?<cell>\d+):line (?<line>\d+)")]
    private static partial Regex StackPlace();
}
