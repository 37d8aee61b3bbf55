using Tamis.Tables;

namespace Tamis.Desserts;

/// <summary>A figure that a newer document states otherwise.</summary>
/// <param name="Column">The column.</param>
/// <param name="From">What the older document states; empty where it is silent.</param>
/// <param name="To">What the newer one states; empty where it is silent: nothing is taken over from the older.</param>
public sealed record FigureChange(string Column, string From, string To);

/// <summary>What was added to a list and what was taken off; both empty where nothing changed.</summary>
/// <param name="Added">What is new.</param>
/// <param name="Removed">What is gone.</param>
/// <param name="IsSilentNow">Whether the older document spoke of it and the newer does not: then nobody has looked.</param>
public sealed record ListChange(IReadOnlyList<string> Added, IReadOnlyList<string> Removed, bool IsSilentNow)
{
    /// <summary>Whether anything changed.</summary>
    public bool IsAny => Added.Count > 0 || Removed.Count > 0 || IsSilentNow;

    internal static ListChange Between(IReadOnlyList<string>? from, IReadOnlyList<string>? to) =>
        new([.. (to ?? []).Except(from ?? [], Names.Comparer)], [.. (from ?? []).Except(to ?? [], Names.Comparer)], from is not null && to is null);
}

/// <summary>A newer document against the one that it supersedes.</summary>
/// <param name="From">The older document.</param>
/// <param name="To">The newer document.</param>
public sealed record SpecificationChange(Specification From, Specification To)
{
    /// <summary>The ingredient.</summary>
    public string Ingredient => To.Ingredient;

    /// <summary>Figures that are stated otherwise, new or gone, in the order of the columns.</summary>
    public IReadOnlyList<FigureChange> Figures =>
    [
        .. From.Row.Sheet.Columns.Select(column => (column, From: Of(From, column), To: Of(To, column)))
            .Where(pair => pair.From != pair.To).Select(pair => new FigureChange(pair.column, pair.From, pair.To)),
    ];

    /// <summary>Allergens.</summary>
    public ListChange Allergens => ListChange.Between(From.Allergens, To.Allergens);

    /// <summary>Allergens that may be there unintended.</summary>
    public ListChange MayContain => ListChange.Between(From.MayContain, To.MayContain);

    /// <summary>Parts of the list of ingredients.</summary>
    public ListChange IngredientList => ListChange.Between(From.IngredientList is [] ? null : From.IngredientList, To.IngredientList is [] ? null : To.IngredientList);

    /// <summary>Additives that are named apart from a list.</summary>
    public ListChange Additives => ListChange.Between(From.Additives, To.Additives);

    /// <summary>Whether the legal name is another.</summary>
    public bool HasOtherLegalName => !Names.Same(From.LegalName, To.LegalName);

    private static string Of(Specification document, string column) => document.Figures.FirstOrDefault(figure => figure.Column == column).Figure ?? "";
}

/// <summary>All documents of a store, ingredient by ingredient, oldest first.</summary>
public sealed class SpecificationHistory
{
    private readonly ILookup<string, Specification> _byIngredient;

    private SpecificationHistory(IReadOnlyList<Specification> all)
    {
        All = all;
        _byIngredient = all.OrderBy(document => document.Date ?? DateOnly.MinValue).ToLookup(document => document.Ingredient, Names.Comparer);
    }

    /// <summary>A store without documents.</summary>
    public static SpecificationHistory None { get; } = new([]);

    /// <summary>The documents in the order of the sheet.</summary>
    public IReadOnlyList<Specification> All { get; }

    /// <summary>Each newer document against the one before it, for every ingredient that has several.</summary>
    public IReadOnlyList<SpecificationChange> Changes =>
        [.. _byIngredient.SelectMany(documents => documents.Zip(documents.Skip(1), (from, to) => new SpecificationChange(from, to)))];

    /// <summary>Reads the sheet. Whether its ingredients are known is for the store to say.</summary>
    public static SpecificationHistory Read(Sheet sheet, List<CellProblem> problems) => new([.. sheet.Rows.Select(row => new RowReader(row, problems))
        .Select(row => new Specification(row.Required("ingredient"), row.Text("document") ?? "a document without a name", row.Date("date"), row.Row))
        .Where(document => document.Ingredient.Length > 0)]);

    /// <summary>The documents on an ingredient, oldest first.</summary>
    public IEnumerable<Specification> Of(string ingredient) => _byIngredient[ingredient];

    /// <summary>The document on an ingredient that counts on a day: the newest on or before it, the first one where none is so early, the newest where no day is asked; null where there is none.</summary>
    public Specification? On(string ingredient, DateOnly? day) =>
        Of(ingredient).LastOrDefault(document => day is null || document.Date is null || document.Date <= day) ?? Of(ingredient).FirstOrDefault();
}
