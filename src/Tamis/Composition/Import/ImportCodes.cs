using Tamis.Tables;

namespace Tamis.Composition.Import;

/// <summary>What a code of a published layout stands for.</summary>
/// <param name="Code">The publisher's code or column.</param>
/// <param name="Name">The publisher's name for it.</param>
/// <param name="OtherName">Its name in the publisher's other language; empty where there is none.</param>
/// <param name="Unit">The unit that the publisher states it in.</param>
/// <param name="Tag">The nutrient that it is; empty for codes that are no nutrients.</param>
/// <param name="Factor">From the publisher's unit to the nutrient's, or to millilitres.</param>
/// <param name="Step">What the factor does, in words, or the word that the code means.</param>
public sealed record ImportCode(string Code, string Name, string OtherName, string Unit, string Tag, double Factor, string Step);

/// <summary>The codes of all layouts, the nutrients that they may bring and the conversions between them: what importers know as data.</summary>
public sealed class ImportCodes
{
    private readonly Dictionary<string, Dictionary<string, ImportCode>> _byLayout;

    private ImportCodes(Dictionary<string, Dictionary<string, ImportCode>> byLayout, NutrientList nutrients, IReadOnlyList<Conversion> conversions) =>
        (_byLayout, Nutrients, Conversions) = (byLayout, nutrients, conversions);

    /// <summary>Every nutrient that an import may bring: those of the kit's table first, then those of <c>import-nutrients.csv</c>.</summary>
    public NutrientList Nutrients { get; }

    /// <summary>The named conversions.</summary>
    public IReadOnlyList<Conversion> Conversions { get; }

    /// <summary>Reads <c>import-codes.csv</c>, <c>import-nutrients.csv</c>, <c>nutrients.csv</c> and <c>conversions.csv</c> from the folder of the kit's composition table.</summary>
    /// <exception cref="TableException">Something in them must be mended.</exception>
    public static ImportCodes Load(string folder)
    {
        List<CellProblem> problems = [];
        NutrientList nutrients = new([.. CompositionFiles.Nutrients(Path.Combine(folder, "nutrients.csv")).All, .. CompositionFiles.Nutrients(Path.Combine(folder, "import-nutrients.csv")).All]);
        var tags = nutrients.All.ToDictionary(nutrient => nutrient.Tag, StringComparer.OrdinalIgnoreCase);
        Dictionary<string, Dictionary<string, ImportCode>> byLayout = new(StringComparer.Ordinal);
        var sheet = SheetFile.Read(Path.Combine(folder, "import-codes.csv"));
        foreach (var row in sheet.Require(["layout", "code", "factor"], problems) ? sheet.Rows.Select(row => new RowReader(row, problems)) : [])
        {
            var layout = row.Required("layout");
            ImportCode code = new(row.Required("code"), row.Row["published_name"], row.Row["other_name"], row.Row["unit"], row.Named("tag", tags)?.Tag ?? "", row.RequiredNumber("factor", double.Epsilon), row.Row["step"]);
            if (!byLayout.TryGetValue(layout, out var codes)) byLayout.Add(layout, codes = new(StringComparer.OrdinalIgnoreCase));
            if (!codes.TryAdd(code.Code, code)) row.Note("code", "each code of a layout once");
        }
        return problems is [] ? new(byLayout, nutrients, Conversion.ReadAll(folder)) : throw new TableException(problems);
    }

    /// <summary>The codes of a layout.</summary>
    public IReadOnlyDictionary<string, ImportCode> Of(string layout) => _byLayout[layout];

    /// <summary>The millilitres that a measure's words begin with, for one of it; null for a piece.</summary>
    public double? Millilitres(string measure)
    {
        // A description may begin with its number, `1 cup`.
        string[] words = [.. measure.ToLowerInvariant().Split([' ', ',', '(', ';'], StringSplitOptions.RemoveEmptyEntries).SkipWhile(word => word == "1")];
        var volumes = Of("volume");
        return words.Length > 1 && volumes.TryGetValue($"{words[0]} {words[1]}", out var two) ? two.Factor
            : words.Length > 0 && volumes.TryGetValue(words[0], out var one) ? one.Factor : null;
    }
}
