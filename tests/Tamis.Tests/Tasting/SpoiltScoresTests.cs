using System.Text;
using Tamis.Tables;
using Tamis.Tasting;

namespace Tamis.Tests.Tasting;

/// <summary>The demo's scores with the slips that happen when ballots are typed in, one by one and all together, in a sheet of a row a serving and in one of a row an answer.</summary>
public class SpoiltScoresTests
{
    private static readonly string Folder = KitFolder.Data("desserts/damson-tart");

    // What is done to the rows and what must be said of it.
    private static readonly (string Slip, Action<Rows> Do, string Said)[] Slips =
    [
        ("a mark off the scale", rows => rows.Of("S1", "A01")["sweetness"] = "72", "column 'sweetness': found '72', expected a number from 0 to 10, the scale of attributes.csv."),
        ("a step that is none", rows => rows.Of("S1", "A02")["sweetness right"] = "6", "column 'sweetness right': found '6', expected a whole number from 1 to 5, the scale of attributes.csv."),
        ("a mark in letters", rows => rows.Of("S1", "A03")["liking"] = "six", "column 'liking': found 'six', expected a number from 0 to 10, or a blank where it was not scored."),
        ("a code never served", rows => rows.Of("S1", "A04")["code"] = "999", "column 'code': found '999', expected a code that A04 was served in S1: 454, 501, 717, 728; 728 has no row yet"),
        ("a code of another tasting", rows => rows.Of("S1", "A05")["code"] = "762", "column 'code': found '762', expected a code that A05 was served in S1: 454, 501, 717, 728; 762 is a code of S2: perhaps a ballot of that tasting; 717 has no row yet"),
        ("a code of other assessors", rows => rows.Of("S4", "A01")["code"] = "217", "column 'code': found '217', expected a code that A01 was served in S4: 174, 723, 934; 217 went to A02, A05, A09, A10 …: perhaps the code or the assessor of another ballot; 174 has no row yet"),
        ("an assessor who is none", rows => rows.Of("S1", "A08")["assessor"] = "A88", "column 'assessor': found 'A88', expected an assessor of this tasting in servings.csv; the nearest is 'A08'"),
        ("a tasting that is none", rows => rows.Of("S1", "A09")["tasting"] = "S7", "column 'tasting': found 'S7', expected a tasting of servings.csv: S1, B1, S2, S3, S4"),
        ("a word that is none", rows => rows.Of("S1", "A10")["terms"] = "tosted; jammy", "column 'terms': found 'tosted', expected words of attributes.csv parted by '; ', or none where nothing fitted; the nearest is 'toasted'."),
        ("a code left out", rows => rows.Of("S1", "A12")["code"] = "", "column 'code': found '', expected a code that A12 was served in S1: 454, 501, 717, 728; 454 has no row yet"),
        ("a serving twice", rows => rows.Add(rows.Of("S1", "A06")), "column 'code': found '501', expected each code once for an assessor in a tasting; A06 has it in row"),
    ];

    public static TheoryData<string, bool> Each
    {
        get
        {
            TheoryData<string, bool> each = [];
            foreach (var (slip, _, _) in Slips)
            {
                each.Add(slip, false);
                each.Add(slip, true);
            }
            return each;
        }
    }

    [Theory]
    [MemberData(nameof(Each))]
    public void Read_OneSlip_IsOneThingToMend(string slip, bool isLong)
    {
        var (_, spoil, said) = Slips.Single(each => each.Slip == slip);

        var problem = Assert.Single(Problems(isLong, spoil));

        Assert.StartsWith("scores.csv, row ", problem, StringComparison.Ordinal);
        Assert.Contains(isLong ? InLong(said) : said, problem, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(false), InlineData(true)]
    public void Read_AllSlipsTogether_AreAllTold(bool isLong)
    {
        var problems = Problems(isLong, rows => { foreach (var slip in Slips) slip.Do(rows); });

        Assert.Equal(Slips.Length, problems.Count);
        Assert.All(Slips, slip => Assert.Contains(problems, problem => problem.Contains(isLong ? InLong(slip.Said) : slip.Said, StringComparison.Ordinal)));
    }

    // A row an answer repeats the code a dozen times: one slip all the same, with all its rows.
    [Fact]
    public void Read_LongSheet_TellsASlipOnceWithItsRows() =>
        Assert.EndsWith("728 has no row yet; it is the same in rows 153 to 163.", Assert.Single(Problems(isLong: true, rows => rows.EachOf("S1", "A04", "728", row => row["code"] = "999"))), StringComparison.Ordinal);

    // A02 and A07 were each served a code that the other was not: each stands with the other's.
    [Theory]
    [InlineData(false), InlineData(true)]
    public void Read_CodesExchangedBetweenAssessors_AreNamedWithEachOther(bool isLong)
    {
        var problems = Problems(isLong, rows =>
        {
            rows.EachOf("S4", "A02", "723", row => row["code"] = "?");
            rows.EachOf("S4", "A07", "934", row => row["code"] = "723");
            rows.EachOf("S4", "A02", "?", row => row["code"] = "934");
        });

        Assert.Equal(2, problems.Count);
        Assert.Contains("has 723 where 934 belongs, so the two may have been exchanged", problems[0], StringComparison.Ordinal);
        Assert.Contains("has 934 where 723 belongs, so the two may have been exchanged", problems[1], StringComparison.Ordinal);
    }

    // Both were served to A11, so nothing is impossible; but everybody else's rows follow the order of serving.
    [Theory]
    [InlineData(false, 42, 43), InlineData(true, 496, 508)]
    public void Read_CodesExchangedWithinAnAssessor_AreToLookAtAndStopNothing(bool isLong, int row, int other)
    {
        List<CellProblem> problems = [];
        var log = Read(isLong, Exchange, problems);

        Assert.Empty(problems);
        Assert.Equal($"scores.csv, row {row}, column 'code': found '454', expected 728 here and 454 in row {other}, if these rows follow the order of serving in S1 as those of the other assessors do: were two codes exchanged?", Assert.Single(log.Doubts).ToString());
        Assert.Empty(Read(isLong, _ => { }, problems).Doubts);
        // Where something must be mended anyway, both are told at once.
        Assert.Equal(2, Problems(isLong, rows => { Exchange(rows); rows.Of("S1", "A01")["sweetness"] = "72"; }).Count);

        static void Exchange(Rows rows)
        {
            rows.EachOf("S1", "A11", "728", each => each["code"] = "?");
            rows.EachOf("S1", "A11", "454", each => each["code"] = "728");
            rows.EachOf("S1", "A11", "?", each => each["code"] = "454");
        }
    }

    // Sheets sorted by code or by hand say nothing of anybody.
    [Fact]
    public void Read_SheetSortedByCode_RaisesNoDoubt()
    {
        List<CellProblem> problems = [];

        Assert.Empty(Read(false, rows => rows.SortByCode(), problems).Doubts);
        Assert.Empty(problems);
    }

    private static string InLong(string said) => said.Replace("column 'sweetness'", "column 'answer'", StringComparison.Ordinal).Replace("column 'sweetness right'", "column 'answer'", StringComparison.Ordinal)
        .Replace("column 'liking'", "column 'answer'", StringComparison.Ordinal).Replace("column 'terms'", "column 'answer'", StringComparison.Ordinal);

    private static List<string> Problems(bool isLong, Action<Rows> spoil)
    {
        List<CellProblem> problems = [];
        Read(isLong, spoil, problems);
        return [.. problems.Select(problem => problem.ToString())];
    }

    private static TastingLog Read(bool isLong, Action<Rows> spoil, List<CellProblem> problems)
    {
        Rows rows = new(SheetFile.Read(Path.Combine(Folder, "scores.csv")));
        spoil(rows);
        var scores = SheetFile.Parse("scores.csv", Encoding.UTF8.GetBytes(isLong ? rows.Long() : rows.Wide()));
        return new TastingSheets(SheetFile.Read(Path.Combine(Folder, "attributes.csv")), SheetFile.Read(Path.Combine(Folder, "servings.csv")), scores) { Tastings = SheetFile.Read(Path.Combine(Folder, "tastings.csv")) }.Read(problems);
    }

    private sealed class Rows(Sheet sheet)
    {
        private static readonly string[] Own = ["tasting", "assessor", "code"];

        private readonly string[] _columns = [.. sheet.Columns];
        private List<Dictionary<string, string>> _rows = [.. sheet.Rows.Select(row => sheet.Columns.ToDictionary(column => column, column => row[column]))];

        public Dictionary<string, string> Of(string tasting, string assessor) => _rows.First(row => row["tasting"] == tasting && row["assessor"] == assessor);

        public void EachOf(string tasting, string assessor, string code, Action<Dictionary<string, string>> change)
        {
            foreach (var row in _rows.Where(row => row["tasting"] == tasting && row["assessor"] == assessor && row["code"] == code)) change(row);
        }

        public void Add(Dictionary<string, string> row) => _rows.Add(new(row));

        public void SortByCode() => _rows = [.. _rows.OrderBy(row => row["code"], StringComparer.Ordinal)];

        public string Wide() => Text(_columns, _rows.Select(row => _columns.Select(column => row[column])));

        public string Long() => Text([.. Own, "attribute", "answer"], from row in _rows from column in _columns.Except(Own) where row[column].Length > 0 select Own.Select(own => row[own]).Append(column).Append(row[column]));

        private static string Text(IEnumerable<string> columns, IEnumerable<IEnumerable<string>> rows) =>
            string.Concat(rows.Prepend(columns).Select(row => string.Join(',', row.Select(cell => $"\"{cell.Replace("\"", "\"\"", StringComparison.Ordinal)}\"")) + "\n"));
    }
}
