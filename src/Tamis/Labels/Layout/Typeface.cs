using System.Globalization;
using Tamis.Tables;

namespace Tamis.Labels;

/// <summary>The face that labels are set in, known by its measures: how wide each character is and how high small letters and capitals are.</summary>
/// <remarks>The widths are those of Helvetica in the Adobe Core 14 AFM files, which Arial and Liberation Sans share; the heights are the smallest of the three,
/// so that print in any of them is at least as high as was asked. Kerning is not counted: a label is set without it.</remarks>
public sealed class Typeface
{
    private const string WidthsFile = "widths.csv";
    private const string MeasuresFile = "face.csv";
    private const double MillimetresPerInch = 25.4;
    private const double UnitsPerSize = 1000;

    private static readonly Lazy<Typeface> Shipped = new(() => Load(KitFolder.Data("type")));

    private readonly Dictionary<int, (double Regular, double Bold)> _widths;

    private Typeface(Dictionary<int, (double, double)> widths, string families, IReadOnlyDictionary<string, double> measures)
    {
        (_widths, Families) = (widths, families.Split(';', StringSplitOptions.TrimEntries));
        (XHeightRatio, CapitalRatio, AscenderRatio, DescenderRatio) = (measures["x_height"], measures["cap_height"], measures["ascender"], measures["descender"]);
        PointMillimetres = MillimetresPerInch / measures["points_per_inch"];
    }

    /// <summary>The face whose measures the kit ships.</summary>
    public static Typeface Kit => Shipped.Value;

    /// <summary>The names of faces with these measures, in the order in which a computer is asked for them.</summary>
    public IReadOnlyList<string> Families { get; }

    /// <summary>The height of a small x, as a share of the type size.</summary>
    public double XHeightRatio { get; }

    /// <summary>The height of capitals and figures, as a share of the type size.</summary>
    public double CapitalRatio { get; }

    /// <summary>How far small letters rise above the base line, as a share of the type size.</summary>
    public double AscenderRatio { get; }

    /// <summary>How far small letters reach below the base line, as a share of the type size.</summary>
    public double DescenderRatio { get; }

    /// <summary>A point in millimetres.</summary>
    public double PointMillimetres { get; }

    /// <summary>Reads the two files of measures.</summary>
    /// <exception cref="TableException">A file is missing or a cell cannot be read; all problems at once.</exception>
    public static Typeface Load(string folder)
    {
        List<CellProblem> problems = [];
        SheetSettings dialect = new(DecimalMark: '.');
        var widths = SheetFile.Read(Path.Combine(folder, WidthsFile), dialect);
        var measures = SheetFile.Read(Path.Combine(folder, MeasuresFile), dialect);
        Dictionary<int, (double, double)> byCode = [];
        Dictionary<string, string> byKey = new(Names.Comparer);
        if (widths.Require(["code", "regular", "bold"], problems))
            foreach (var cells in widths.Rows.Select(row => new RowReader(row, problems)))
            {
                if (cells.Required("code") is not ['U', '+', .. var hex] || !int.TryParse(hex, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var code)) cells.Note("code", "a character’s code, such as U+0041");
                else if (!byCode.TryAdd(code, (cells.RequiredNumber("regular", 0) / UnitsPerSize, cells.RequiredNumber("bold", 0) / UnitsPerSize))) cells.Note("code", "each character once");
            }
        if (measures.Require(["key", "value"], problems))
            foreach (var cells in measures.Rows.Select(row => new RowReader(row, problems)))
                if (!byKey.TryAdd(cells.Required("key"), cells.Required("value"))) cells.Note("key", "each measure once");
        Dictionary<string, double> numbers = new(Names.Comparer);
        foreach (var key in new[] { "x_height", "cap_height", "ascender", "descender", "points_per_inch" })
        {
            if (byKey.TryGetValue(key, out var text) && double.TryParse(text, CultureInfo.InvariantCulture, out var value) && value > 0) numbers.Add(key, value);
            else problems.Add(new(MeasuresFile, 0, "key", "", $"a row '{key}' with a number above 0"));
        }
        if (!byKey.TryGetValue("family", out var families)) problems.Add(new(MeasuresFile, 0, "key", "", "a row 'family'"));
        return problems is [] ? new(byCode, families!, numbers) : throw new TableException(problems);
    }

    /// <summary>Whether the width of every character is known.</summary>
    public bool Knows(string text) => text.EnumerateRunes().All(rune => _widths.ContainsKey(rune.Value));

    /// <summary>How wide a text is, in millimetres.</summary>
    /// <param name="text">One line of it.</param>
    /// <param name="sizeMillimetres">The type size.</param>
    /// <param name="isBold">Whether it is set in bold type.</param>
    /// <remarks>A character without a width counts as a whole type size, wider than any letter: the line may end early, never late.</remarks>
    public double WidthMillimetres(string text, double sizeMillimetres, bool isBold)
    {
        var width = 0.0;
        foreach (var rune in text.EnumerateRunes())
            width += _widths.TryGetValue(rune.Value, out var known) ? isBold ? known.Bold : known.Regular : 1;
        return width * sizeMillimetres;
    }
}
