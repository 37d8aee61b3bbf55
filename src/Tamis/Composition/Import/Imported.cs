using Tamis.Tables;

namespace Tamis.Composition.Import;

/// <summary>What came out of an import: the rows of a table, and the report on how they came about.</summary>
/// <param name="Rows">The rows, in the kit's layout.</param>
/// <param name="Report">What was taken, merged, converted and left.</param>
public sealed record Imported(CompositionRows Rows, ImportReport Report)
{
    /// <summary>The table that the rows are.</summary>
    /// <exception cref="TableException">A row is none that a table may hold.</exception>
    public CompositionTable ToTable() => Rows.ToTable();

    /// <summary>The same with a named conversion made for every food that does not state the nutrient itself; the report says for how many.</summary>
    /// <param name="conversion">Its name, as <c>conversions.csv</c> of the kit has it: <c>carbohydrate with fibre</c>.</param>
    /// <exception cref="KeyNotFoundException">There is no such conversion; the message names near ones.</exception>
    public Imported With(string conversion)
    {
        var codes = ImportCodes.Load(KitFolder.Data("composition"));
        var step = codes.Conversions.FirstOrDefault(each => Names.Same(each.Name, conversion))
            ?? throw new KeyNotFoundException($"No conversion is called '{conversion}'; near ones: {string.Join(", ", Names.Nearest(conversion, codes.Conversions.Select(each => each.Name)))}.");
        NutrientList nutrients = Rows.Nutrients.IndexOf(step.Tag) >= 0 ? Rows.Nutrients : new([.. Rows.Nutrients.All, codes.Nutrients[step.Tag]]);
        var to = nutrients.IndexOf(step.Tag);
        var made = 0;
        List<IReadOnlyDictionary<int, ContentRow>> contents = [];
        for (var row = 0; row < Rows.Foods.Count; row++)
        {
            Dictionary<int, ContentRow> own = new(Rows.Contents[row]);
            if (!own.ContainsKey(to) && step.Of(own, nutrients, Rows.Foods[row].NitrogenFactor, Rows.Sources[0].Key) is { } converted)
            {
                own.Add(to, converted);
                made++;
            }
            contents.Add(own);
        }
        CompositionRows rows = new() { Foods = Rows.Foods, Nutrients = nutrients, Contents = contents, Measures = Rows.Measures, Sources = Rows.Sources };
        return new(rows, Report with { Notes = [.. Report.Notes, new(ImportDeed.Converted, "values", made, $"{step.Name}, {step.Tag} = {step.Formula}", [])] });
    }

    /// <summary>Writes the table and its report into a folder that is not there yet or is empty: all files or none.</summary>
    /// <exception cref="IOException">The folder holds something already, or cannot be written; then nothing was written.</exception>
    public void WriteTo(string folder)
    {
        var files = Rows.ToFiles().Append(new(ImportReport.FileName, Report.ToFile()));
        FolderFile.WriteWhole(folder, files);
    }
}
