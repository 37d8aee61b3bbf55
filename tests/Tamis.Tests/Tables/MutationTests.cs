using System.Globalization;
using System.Text;
using Tamis.Composition;
using Tamis.Tables;

namespace Tamis.Tests.Tables;

/// <summary>Changed cells and files crash nothing and never change a value in silence: a load is as the original where nothing was touched, or names what it cannot read.</summary>
/// <remarks><c>TAMIS_FUZZ=full</c> runs a million cells and ten thousand files.</remarks>
public sealed class MutationTests : IDisposable
{
    private static readonly bool IsFull = Environment.GetEnvironmentVariable("TAMIS_FUZZ") == "full";

    private static readonly string[] Foods = ["LAB 1", "LAB 02", "LAB 3E2", "LAB 4"];
    private static readonly string[] Tags = ["FAT", "NA", "FOL", "WATER"];

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData(',', '.')]
    [InlineData(';', ',')]
    [InlineData('\t', '.')]
    public void Parse_MutatedCells_AreNamedOrMeanWhatTheySay(char separator, char mark)
    {
        Mutations mutations = new(separator);
        const int rows = 20, columns = 6, changes = 6;
        var header = string.Join(separator, Enumerable.Range(0, columns).Select(column => $"column {(char)('a' + column)}"));
        for (var cells = IsFull ? 300_000 : 6_000; cells > 0; cells -= changes)
        {
            var texts = new string[rows * columns];
            for (var i = 0; i < texts.Length; i++) texts[i] = Number(mutations.Next(10_000), mark);
            var original = (string[])texts.Clone();
            for (var change = 0; change < changes; change++)
            {
                var at = mutations.Next(texts.Length);
                texts[at] = mutations.Cell(texts[at]);
            }
            var text = $"{header}\n{string.Concat(texts.Chunk(columns).Select(row => string.Join(separator, row.Select(cell => Mutations.Quoted(cell, separator))) + "\n"))}";
            Sheet sheet;
            try
            {
                sheet = SheetFile.Parse("sheet.csv", Encoding.UTF8.GetBytes(text));
            }
            catch (TableException error)
            {
                Assert.NotEmpty(error.Problems);
                continue;
            }
            List<CellProblem> problems = [];
            foreach (var row in sheet.Rows)
            {
                RowReader reader = new(row, problems);
                for (var column = 0; column < columns; column++)
                {
                    var (at, before) = ((row.Number - 2) * columns + column, problems.Count);
                    var found = reader.Number($"column {(char)('a' + column)}");
                    if (texts[at] != original[at] || found is not null) Assert.True(found == Mutations.Meaning(texts[at], sheet.Dialect.DecimalMark) || problems.Count > before || texts[at].Trim().Length == 0, $"'{texts[at]}' was read as {found}");
                    else Assert.True(problems.Count > before, $"the untouched '{texts[at]}' is gone");
                }
            }
        }
    }

    [Theory]
    [InlineData(',', '.')]
    [InlineData(';', ',')]
    public void Load_MutatedCellsOfATable_AreNamedOrMeanWhatTheySay(char separator, char mark)
    {
        Mutations mutations = new(1_000 + separator);
        Start();
        for (var cells = IsFull ? 50_000 : 600; cells > 0; cells -= 2)
        {
            var rows = Rows(mark);
            HashSet<int> touched = [];
            for (var change = 0; change < 2; change++)
            {
                var (row, column) = (mutations.Next(rows.Count), mutations.Next(rows[0].Length));
                rows[row][column] = mutations.Cell(rows[row][column]);
                touched.Add(row);
            }
            var text = string.Join(separator, ["food", "tag", "state", "value", "low", "high", "samples", "standard_deviation", "source", "method"]) + "\n"
                + string.Concat(rows.Select(row => string.Join(separator, row.Select(cell => Mutations.Quoted(cell, separator))) + "\n"));
            if (Loaded(Encoding.UTF8.GetBytes(text)) is not { } table) continue;
            foreach (var row in Enumerable.Range(0, rows.Count))
            {
                var found = table.Content(Foods[row / Tags.Length], Tags[row % Tags.Length]);
                if (!touched.Contains(row)) Assert.Equal(Value(row), found.Per100Grams);
                else if (rows[row][0] == Foods[row / Tags.Length] && rows[row][1] == Tags[row % Tags.Length] && found.State is ContentState.Measured or ContentState.Zero)
                    // A unit in the cell is read and converted; what it makes of a figure is tested elsewhere.
                    Assert.True(rows[row][3].EndsWith('g') || found.Per100Grams == Mutations.Meaning(rows[row][3], mark), $"'{rows[row][3]}' was read as {found.Per100Grams}");
            }
        }
    }

    [Theory]
    [InlineData(',', '.')]
    [InlineData(';', ',')]
    public void Load_MutatedFiles_AreRefusedOrAsTheyWereWhereUntouched(char separator, char mark)
    {
        Mutations mutations = new(2_000 + separator);
        Start();
        string[] lines = [string.Join(separator, ["food", "tag", "state", "value", "low", "high", "samples", "standard_deviation", "source", "method"]), .. Rows(mark).Select(row => string.Join(separator, row.Select(cell => Mutations.Quoted(cell, separator))))];
        for (var files = IsFull ? 5_000 : 200; files > 0; files--)
        {
            var (bytes, touched) = mutations.File(lines);
            if (Loaded(bytes) is not { } table) continue;
            for (var row = 0; row + 1 < lines.Length; row++)
                if (!touched.Contains(row + 1)) Assert.True(Value(row) == table.Content(Foods[row / Tags.Length], Tags[row % Tags.Length]).Per100Grams, $"row {row + 2} of:\n{Encoding.Latin1.GetString(bytes)}");
        }
    }

    private void Start()
    {
        _folder.Write("sources.csv", "key,evidence,title\nlab,published,Our laboratory\n");
        _folder.Write("nutrients.csv", "tag,word,unit\nFAT,fat,g\nNA,sodium,mg\nFOL,folate,ug\nWATER,water,g\n");
        _folder.Write("foods.csv", "food,name,source\n" + string.Concat(Foods.Select(food => $"{food},Food {food},lab\n")));
    }

    private CompositionTable? Loaded(byte[] contents)
    {
        File.WriteAllBytes(Path.Combine(_folder.Path, "contents.csv"), contents);
        try
        {
            return CompositionTable.Load(_folder.Path);
        }
        catch (TableException error)
        {
            Assert.NotEmpty(error.Problems);
            return null;
        }
    }

    private static List<string[]> Rows(char mark) => [.. Enumerable.Range(0, Foods.Length * Tags.Length).Select(row => (string[])
        [Foods[row / Tags.Length], Tags[row % Tags.Length], "measured", Value(row).ToString(CultureInfo.InvariantCulture).Replace('.', mark), "", "", "5", "0.1".Replace('.', mark), "lab", row % 3 == 0 ? "weighed, \u00e9tuve" : ""])];

    private static double Value(int row) => 1.5 + row * 3.25;

    private static string Number(int number, char mark) => (number / 8.0).ToString("R", CultureInfo.InvariantCulture).Replace('.', mark);
}
