namespace Tamis.Views.Tests;

/// <summary>The main components as approved texts, so that a change of wording or markup shows in review.</summary>
/// <remarks>After a wanted change, <c>TAMIS_APPROVE=path/to/Approved dotnet test</c> writes the texts anew; read them before you commit.</remarks>
public class ApprovedTests
{
    private static readonly Dictionary<string, Func<IView>> Views = new()
    {
        ["table"] = () => Samples.Changes,
        ["working"] = () => WorkingView.Of(Samples.Fibre),
        ["tree"] = () => TrialTree.Of(Samples.Trials),
        ["differences"] = () => Samples.Differences,
        ["bars"] = () => Samples.MadeOfBars,
        ["panel-table"] = () => Samples.European,
        ["panel-box"] = () => Html.Of($"{Samples.American.Pack()}"),
        ["weighing-sheet"] = () => Samples.TwelveTarts with { Components = [.. Samples.TwelveTarts.Components.Take(1)] },
    };

    public static TheoryData<string> Names => [.. Views.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void View_Markup_IsAsApproved(string name) => Check(name + ".html", Views[name]().ToHtml().Markup);

    [Theory]
    [MemberData(nameof(Names))]
    public void View_PlainText_IsAsApproved(string name) => Check(name + ".txt", Views[name]().ToHtml().ToPlainText());

    private static void Check(string file, string found)
    {
        var text = found.TrimEnd('\n') + "\n";
        if (Environment.GetEnvironmentVariable("TAMIS_APPROVE") is { } folder) File.WriteAllText(Path.Combine(folder, file), text);
        else Assert.Equal(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Approved", file)).ReplaceLineEndings("\n"), text);
    }
}
