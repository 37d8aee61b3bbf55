using Tamis.App.Tasting;

namespace Tamis.App.Tests.Tasting;

public class TastingCommandTests
{
    private const string Ready = "S5,2026-11-27,scores,T1; T2,T1,25,12,20,4,2,,4115\n";

    private static ScratchFolder Folder(string row = Ready)
    {
        ScratchFolder scratch = new();
        scratch.Write("formula.csv", "component,line,T1,T2\nshell,flour,200 g,150 g\nshell,butter,100 g,110 g\n");
        scratch.Write("trials.csv", "trial,parent,made_on\nT1,,2026-11-01; 2026-11-20\nT2,T1,2026-11-26\n");
        scratch.Write("store/ingredients.csv", "ingredient,allergens\nflour,wheat\nbutter,\n");
        scratch.Write("attributes.csv", "attribute;kind;low;high;words\nliking;liking;0;10;\nterms;words;;;nutty, mild\n".Replace(", ", "; ", StringComparison.Ordinal).Replace("nutty; mild", "\"nutty; mild\"", StringComparison.Ordinal));
        scratch.Write("tastings.csv", "tasting,date,kind,trials,control,portion_g,served_c,minutes_out,assessors,servings_each,design,seed\n" + row);
        return scratch;
    }

    private static (int Code, string Said) Run(ScratchFolder scratch, string tasting = "S5")
    {
        using var said = new StringWriter();
        return (TastingCommand.Run(scratch.Path, tasting, null, said), said.ToString());
    }

    [Fact]
    public void Run_ReadyRow_WritesPlanRowsToFillAndPages()
    {
        using var scratch = Folder();
        var (code, said) = Run(scratch);

        Assert.Equal(0, code);
        var servings = File.ReadAllLines(scratch["servings.csv"]);
        Assert.Equal(9, servings.Length);
        Assert.Equal("tasting,assessor,position,code,trial,make", servings[0].TrimStart('\ufeff'));
        Assert.All(servings.Skip(1), row => Assert.EndsWith(row.Contains(",T1,", StringComparison.Ordinal) ? ",2" : ",1", row, StringComparison.Ordinal));
        Assert.Equal("tasting,assessor,code,liking,terms,remark", File.ReadAllLines(scratch["scores.csv"])[0].TrimStart('\ufeff'));
        Assert.Contains("nobody has written down the allergens of butter", said, StringComparison.Ordinal);
        var ballots = File.ReadAllText(scratch["to-print/s5-ballots.html"]);
        Assert.Contains("It contains</b> wheat", ballots, StringComparison.Ordinal);
        Assert.Contains("I have read what it contains", ballots, StringComparison.Ordinal);
        Assert.DoesNotContain(">T1<", ballots, StringComparison.Ordinal);
        Assert.DoesNotContain("T2", ballots, StringComparison.Ordinal);
    }

    [Fact]
    public void Run_Again_ChangesNothing()
    {
        using var scratch = Folder();
        Run(scratch);
        var before = (File.ReadAllText(scratch["servings.csv"]), File.ReadAllText(scratch["scores.csv"]), File.ReadAllText(scratch["to-print/s5-ballots.html"]));
        var (code, said) = Run(scratch);

        Assert.Equal(0, code);
        Assert.Contains("was planned already", said, StringComparison.Ordinal);
        Assert.Equal(before, (File.ReadAllText(scratch["servings.csv"]), File.ReadAllText(scratch["scores.csv"]), File.ReadAllText(scratch["to-print/s5-ballots.html"])));
    }

    [Fact]
    public void Run_ScoresThatStandThere_AreKeptInTheirDialect()
    {
        using var scratch = Folder(Ready + "S4,2026-11-01,scores,T1; T2,T1,25,12,20,1,2,,1\n");
        scratch.Write("servings.csv", "tasting;assessor;position;code;trial;make;weather\nS4;A01;1;111;T1;1;wet\nS4;A01;2;222;T2;1;dry\n");
        scratch.Write("scores.csv", "tasting;assessor;code;liking;note\nS4;A01;111;7,5;mine\nS4;A01;222;6,5;\n");
        Assert.Equal(0, Run(scratch).Code);

        Assert.StartsWith("tasting;assessor;position;code;trial;make;weather\nS4;A01;1;111;T1;1;wet\nS4;A01;2;222;T2;1;dry\nS5;A01;1;", File.ReadAllText(scratch["servings.csv"]), StringComparison.Ordinal);
        Assert.StartsWith("tasting;assessor;code;liking;note;terms;remark\nS4;A01;111;7,5;mine;;\nS4;A01;222;6,5;;;\nS5;A01;", File.ReadAllText(scratch["scores.csv"]), StringComparison.Ordinal);
    }

    [Fact]
    public void Run_RowThatLacksItsSeed_WritesNothing()
    {
        using var scratch = Folder(Ready.Replace("4115", "", StringComparison.Ordinal));
        var (code, said) = Run(scratch);

        Assert.Equal(1, code);
        Assert.Contains("tastings.csv, row 2, column 'seed': found '', expected a whole number", said, StringComparison.Ordinal);
        Assert.False(File.Exists(scratch["servings.csv"]) || File.Exists(scratch["scores.csv"]) || Directory.Exists(scratch["to-print"]));
    }

    [Fact]
    public void Run_ScoresOpenInASpreadsheet_LeavesBothSheetsAsTheyWere()
    {
        using var scratch = Folder();
        scratch.Write("scores.csv", "tasting,assessor,code,liking\n");
        scratch.Write(".~lock.scores.csv#", "");
        Assert.Equal(1, Run(scratch).Code);

        Assert.False(File.Exists(scratch["servings.csv"]));
        Assert.Equal("tasting,assessor,code,liking\n", File.ReadAllText(scratch["scores.csv"]));
    }

    [Fact]
    public void Run_UnknownTasting_NamesThoseThereAre()
    {
        using var scratch = Folder();
        Assert.Contains("there are S5", Run(scratch, "S7").Said, StringComparison.Ordinal);
    }
}
