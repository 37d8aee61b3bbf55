using System.Text;
using Tamis.Tables;
using Tamis.Tasting;

namespace Tamis.Tests.Tasting;

/// <summary>A small tasting, written as sheets; each test changes what it is about.</summary>
internal sealed record TastingTexts
{
    public string Attributes { get; init; } = """
        attribute,kind,low,high,low_word,high_word,question,words
        sweetness,intensity,0,10,not sweet,very sweet,How sweet?,
        liking,liking,0,10,not at all,very much,How much do you like it?,
        sweetness right,just-right,1,5,too little,too much,Sweetness is,
        terms,words,,,,,Tick what fits.,nutty; jammy; bread crust

        """;

    public string Servings { get; init; } = """
        tasting,assessor,position,code,trial,make
        S1,A01,1,454,T1,2
        S1,A01,2,717,T2,1
        S1,A02,1,717,T2,1
        S1,A02,2,454,T1,2

        """;

    public string Scores { get; init; } = """
        tasting,assessor,code,sweetness,liking,sweetness right,terms,remark
        S1,A01,454,7.2,6,4,nutty; Bread_Crust,"set like a jelly; too firm"
        S1,A01,717,6.4,5.5,3,none,
        S1,A02,717,,4,2,,
        S1,A02,454,0,3,3,jammy,

        """;

    public string? Tastings { get; init; }

    public IReadOnlyCollection<string>? Trials { get; init; }

    public TastingLog Read(out IReadOnlyList<string> problems)
    {
        List<CellProblem> found = [];
        var log = new TastingSheets(Sheet("attributes.csv", Attributes), Sheet("servings.csv", Servings), Sheet("scores.csv", Scores))
        {
            Tastings = Tastings is null ? null : Sheet("tastings.csv", Tastings),
            Trials = Trials,
        }.Read(found);
        problems = [.. found.Select(problem => problem.ToString())];
        return log;
    }

    public TastingLog Read()
    {
        var log = Read(out var problems);
        Assert.Empty(problems);
        return log;
    }

    private static Sheet Sheet(string file, string text) => SheetFile.Parse(file, Encoding.UTF8.GetBytes(text));
}
