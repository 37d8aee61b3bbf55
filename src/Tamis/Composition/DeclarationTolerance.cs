using Tamis.Tables;

namespace Tamis.Composition;

/// <summary>How far what is in the pack may lie from a declared figure before an authority objects.</summary>
/// <param name="Name">The rules, <c>eu</c>: the word under <c>tolerance</c> of a supplier's document.</param>
/// <param name="Column">The column of the document that it is for.</param>
/// <param name="From">The least declared figure that the row is for, in the unit of the column.</param>
/// <param name="Below">Where the next row begins; null where none does.</param>
/// <param name="Minus">How much less may be there.</param>
/// <param name="Plus">How much more may be there.</param>
/// <param name="IsPercent">Whether these are per cent of the declared figure, or in the unit of the column.</param>
/// <param name="Source">Where they come from.</param>
public sealed record DeclarationTolerance(string Name, string Column, double From, double? Below, double Minus, double Plus, bool IsPercent, Source Source)
{
    /// <summary>Reads <c>declaration-tolerances.csv</c> from the folder of a composition table; none where there is no such file.</summary>
    /// <exception cref="TableException">Something in it must be mended.</exception>
    public static IReadOnlyList<DeclarationTolerance> ReadAll(string folder)
    {
        var path = Path.Combine(folder, "declaration-tolerances.csv");
        if (!File.Exists(path)) return [];
        List<CellProblem> problems = [];
        var sheet = SheetFile.Read(path);
        if (!sheet.Require(["tolerance", "column", "from", "below", "minus", "plus", "kind", "source", "evidence"], problems)) throw new TableException(problems);
        DeclarationTolerance[] all = [.. sheet.Rows.Select(row => new RowReader(row, problems)).Select(row => new DeclarationTolerance(
            row.Required("tolerance"), row.Required("column"), row.RequiredNumber("from", 0), row.Number("below", 0), row.RequiredNumber("minus", 0), row.RequiredNumber("plus", 0),
            row.Choice("kind", Kinds) ?? false, new(row.Required("source") is { Length: > 0 } source ? source : sheet.File, row.Choice("evidence", CompositionFiles.EvidenceWords) ?? Evidence.Memory)))];
        return problems is [] ? all : throw new TableException(problems);
    }

    private static readonly Dictionary<string, bool> Kinds = new() { ["percent"] = true, ["absolute"] = false };

    /// <summary>Whether the row is for a declared figure.</summary>
    public bool Takes(double declared) => declared >= From && (Below is not { } below || declared < below);

    /// <summary>How much less and how much more may be there than a declared figure, in its unit.</summary>
    public (double Minus, double Plus) Of(double declared) => IsPercent ? (declared * Minus / 100, declared * Plus / 100) : (Minus, Plus);
}
