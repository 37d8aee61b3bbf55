using Tamis.Tables;

namespace Tamis.Desserts;

/// <summary>A supplier's document on an ingredient, as a row of <c>specifications.csv</c> has it.</summary>
/// <param name="Ingredient">The ingredient.</param>
/// <param name="Document">The document's name.</param>
/// <param name="Date">Its date; null where none was written, and then it counts as the oldest.</param>
/// <param name="Row">Where it stands.</param>
public sealed record Specification(string Ingredient, string Document, DateOnly? Date, SheetRow Row)
{
    /// <summary>The columns that are words about the document, not figures of it.</summary>
    private static readonly string[] Words = ["ingredient", "document", "supplier", "date", "legal_name", "ingredient_list", "additives", "allergens", "may_contain", "tolerance", "notes"];

    /// <summary>Who supplied it; empty where nobody wrote it.</summary>
    public string Supplier => Row["supplier"];

    /// <summary>Whether nobody but the kitchen stands behind it.</summary>
    public bool IsOwnEstimate => Names.Same(Document, Composition.StatedFigures.OwnEstimate);

    /// <summary>The legal name; empty where nobody wrote it.</summary>
    public string LegalName => Row["legal_name"];

    /// <summary>The list of ingredients as the document has it, part by part.</summary>
    public IReadOnlyList<string> IngredientList => Parted(Row["ingredient_list"], ',', ';');

    /// <summary>The additives that the document names, where it has no whole list: null = the document is silent, empty = it says that there are none.</summary>
    public IReadOnlyList<string>? Additives => LookedAt(Row["additives"]);

    /// <summary>The allergens in it: null = the document is silent, empty = it says that there are none.</summary>
    public IReadOnlyList<string>? Allergens => LookedAt(Row["allergens"]);

    /// <summary>Allergens that may be there unintended: null = the document is silent.</summary>
    public IReadOnlyList<string>? MayContain => LookedAt(Row["may_contain"]);

    /// <summary>The figures that it states, by column, as they are written.</summary>
    public IReadOnlyList<(string Column, string Figure)> Figures =>
        [.. Row.Sheet.Besides(Words).Where(column => Row[column].Length > 0).Select(column => (column, Row[column]))];

    /// <summary>The document in words: <c>FRUIT-22 of S9, 2026-04-15</c>.</summary>
    public string InWords => string.Concat(Document, Supplier.Length > 0 ? $" of {Supplier}" : "", Date is { } date ? FormattableString.Invariant($", {date:yyyy-MM-dd}") : "");

    private static IReadOnlyList<string>? LookedAt(string cell) => Store.LookedAt(Parted(cell, ';'));

    // A comma inside brackets or between digits parts nothing: "emulsifiers: lecithins (soya, rape)", "1,5 %".
    private static List<string> Parted(string cell, params char[] separators)
    {
        List<string> parts = [];
        var (start, depth) = (0, 0);
        for (var i = 0; i <= cell.Length; i++)
        {
            if (i < cell.Length && cell[i] is '(' or '[') depth++;
            if (i < cell.Length && cell[i] is ')' or ']') depth--;
            var isEnd = i == cell.Length || depth <= 0 && separators.Contains(cell[i]) && !(i + 1 < cell.Length && char.IsAsciiDigit(cell[i + 1]) && i > 0 && char.IsAsciiDigit(cell[i - 1]));
            if (!isEnd) continue;
            if (cell[start..i].Trim() is { Length: > 0 } part) parts.Add(part);
            start = i + 1;
        }
        return parts;
    }
}
