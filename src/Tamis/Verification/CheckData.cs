using Tamis.Statistics.Models;
using Tamis.Tables;

namespace Tamis.Verification;

/// <summary>The data file that a check names: <c>data</c>, a CSV beside the check file, and <c>factors</c>, the columns that are read as factors.</summary>
internal static class CheckData
{
    public static Sheet Sheet(CheckInputs inputs) =>
        SheetFile.Read(Path.Combine(inputs.Folder, inputs.Text("data")), new SheetSettings(DecimalMark: '.'));

    public static ModelData Columns(CheckInputs inputs, IEnumerable<string> names)
    {
        var sheet = Sheet(inputs);
        var factors = inputs.OptionalText("factors") is null ? [] : inputs.List("factors");
        return names.Aggregate(ModelData.Empty, (columns, name) => factors.Contains(name)
            ? columns.WithFactor(name, [.. Texts(sheet, name)])
            : columns.WithNumbers(name, [.. Texts(sheet, name).Select(text => text is null ? double.NaN : Number(sheet, name, text))]));
    }

    // Null is missing. 'NA' is missing in data files of statistics; in the kit's own sheets it never is.
    public static IEnumerable<string?> Texts(Sheet sheet, string column) => sheet.Has(column)
        ? sheet.Rows.Select(row => row[column] is "" or "NA" ? null : row[column])
        : throw new FormatException($"{sheet.File} has no column '{column}'");

    public static double Number(Sheet sheet, string column, string text) => NumberText.TryParse(text, '.', out var number, out _)
        ? number
        : throw new FormatException($"{sheet.File} has '{text}' in column '{column}', not a number");
}
