using System.Text.RegularExpressions;
using Tamis.Tables;

namespace Tamis.Costing;

/// <summary>What the suppliers asked, day by day, in one currency.</summary>
public sealed partial class PriceList
{
    private readonly ILookup<string, Price> _byIngredient;

    private PriceList(IReadOnlyList<Price> all, string? currency)
    {
        (All, Currency) = (all, currency);
        _byIngredient = all.ToLookup(price => price.Ingredient, Names.Comparer);
    }

    /// <summary>A kitchen that wrote down no price.</summary>
    public static PriceList None { get; } = new([], null);

    /// <summary>Every row, in the order of the sheet.</summary>
    public IReadOnlyList<Price> All { get; }

    /// <summary>The currency of every price (EUR); null where no price is known.</summary>
    public string? Currency { get; }

    /// <summary>The days on which a price was written, earliest first.</summary>
    public IReadOnlyList<DateOnly> Days => field ??= [.. All.Select(price => price.Date).OfType<DateOnly>().Distinct().Order()];

    /// <summary>The prices of an ingredient, earliest first; of one day as the sheet has them.</summary>
    public IReadOnlyList<Price> Of(string ingredient) => [.. _byIngredient[ingredient].OrderBy(price => price.Date ?? DateOnly.MinValue)];

    /// <summary>The price that counts on a day: the newest on or before it, whoever the supplier; with none so early the first one; null where there is none at all.</summary>
    /// <param name="ingredient">The ingredient.</param>
    /// <param name="day">The day; null for the newest of all.</param>
    /// <remarks>A newest row without a price says that the price is not known any more: no older one stands in for it.</remarks>
    public PriceInUse? On(string ingredient, DateOnly? day)
    {
        var all = Of(ingredient);
        if (all.Count == 0) return null;
        if (day is null) return new(all[^1], false);
        return all.LastOrDefault(price => price.Date is null || price.Date <= day) is { } inTime ? new(inTime, false) : new(all[0], true);
    }

    /// <summary>Reads <c>prices.csv</c>.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="ingredients">The names of the store's ingredients; null where the store has no ingredients sheet.</param>
    /// <param name="currency">The currency that the dessert counts in; null for that of the first price.</param>
    /// <param name="problems">Receives every cell that must be mended: a negative price, a pack without a size, an ingredient that nobody has, another currency.</param>
    public static PriceList Read(Sheet sheet, IReadOnlyList<string>? ingredients, string? currency, List<CellProblem> problems)
    {
        if (!sheet.Require(["ingredient", "pack_g", "price"], problems)) return None;
        var counted = currency;
        List<Price> all = [];
        foreach (var row in sheet.Rows)
        {
            var reader = new RowReader(row, problems);
            var name = reader.Required("ingredient");
            if (name.Length > 0 && ingredients is not null && !ingredients.Contains(name, Names.Comparer))
                reader.Note("ingredient", $"an ingredient of ingredients.csv{(Names.Nearest(name, ingredients) is { Count: > 0 } near ? $"; near ones: {string.Join(", ", near)}" : "")}");
            var price = reader.Number("price", 0);
            var pack = PackOf(reader, price);
            if (price is not null) counted = CurrencyOf(reader, counted, currency is not null);
            all.Add(new(name, price, pack, reader.Date("date"), row.Origin("price")) { Supplier = row["supplier"], Pack = row["pack"] });
        }
        return new(all, all.Any(price => price.PackPrice is not null) ? counted?.ToUpperInvariant() : null);
    }

    private static double? PackOf(RowReader reader, double? price)
    {
        if (reader.Text("pack_g") is null)
        {
            // What costs nothing costs nothing whatever the pack holds.
            if (price is > 0) reader.Note("pack_g", "what the pack holds, in grams: without it the price says nothing of a gram");
            return null;
        }
        var grams = reader.Number("pack_g");
        if (grams is not <= 0) return grams;
        reader.Note("pack_g", "grams above zero");
        return null;
    }

    private static string? CurrencyOf(RowReader reader, string? counted, bool isOfDessert)
    {
        if (reader.Text("currency") is not { } written || !Code().IsMatch(written))
        {
            reader.Note("currency", "the three letters of a currency (ISO 4217), such as EUR");
            return counted;
        }
        if (counted is not null && !Names.Same(written, counted))
            reader.Note("currency", $"{counted.ToUpperInvariant()}, as {(isOfDessert ? "dessert.csv says" : "the first price has it")}: the kit changes no money, so write the price in that currency");
        return counted ?? written;
    }

    [GeneratedRegex("^[A-Za-z]{3}$")]
    private static partial Regex Code();
}
