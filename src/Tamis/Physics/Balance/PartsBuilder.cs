using System.Globalization;
using Tamis.Formulas;

namespace Tamis.Physics;

/// <summary>Takes one ingredient apart into the parts of a balance, each gram once.</summary>
internal sealed class PartsBuilder(Ingredient ingredient, IngredientKind kind, GlucoseSyrups syrups, List<string> remarks)
{
    // Less than this in 100 g of what a total leaves is the rounding of the record.
    private const double RoundingGrams = 0.5;

    // Carbohydrate by difference gathers the errors of all other analyses: less than this leaves no room worth naming for polyols.
    private const double DifferenceGrams = 1.5;

    private readonly PartContent[] _parts = [.. Enumerable.Repeat(PartContent.Unknown, BalanceParts.Known.Count)];

    private double this[BalancePart part] => _parts[(int)part].Per100Grams;

    public PartContent[] Build()
    {
        SetWater();
        SetSalt();
        new SugarSplit(ingredient, kind, syrups, _parts).Set();
        SetStated(BalancePart.OrganicAcids, "OA");
        SetStated(BalancePart.Starch, "STARCH");
        SetPolyols();
        SetStated(BalancePart.Alcohol, "ALC");
        new FatSplit(ingredient, kind, _parts, remarks).Set();
        if (kind.SolidsAre.Count > 0) SetSolids();
        else SetApart();
        return _parts;
    }

    private void SetWater()
    {
        if (Stated("WATER") is { IsKnown: true } stated) Set(BalancePart.Water, stated);
        else if (ingredient.SolidsPercent is { } solids) Set(BalancePart.Water, new(100 - solids, "100 g less the solids of the sheet", ingredient.Origin));
    }

    // Salt is what was added as such: the sodium of a fruit or a milk belongs to its own minerals.
    private void SetSalt()
    {
        if (!kind.SodiumIsSalt || kind.HasNone(BalancePart.Salt)) SetNone(BalancePart.Salt, "its sodium is of its own minerals");
        else if (Stated("NA") is { IsKnown: true } sodium)
        {
            var salt = sodium.Per100Grams / 1000 * Molar.SodiumChlorideGramsPerMole / Molar.SodiumGramsPerMole;
            if (Stated("ASH") is { IsKnown: true } ash) salt = Math.Min(salt, ash.Per100Grams);
            Set(BalancePart.Salt, new(salt, "sodium as sodium chloride", sodium.Source));
        }
    }

    private void SetPolyols()
    {
        var total = Stated("POLYL");
        if (!total.IsKnown && kind.HasNone(BalancePart.UnsplitPolyols)) total = None("none by its nature");
        // Polyols are carbohydrate: where that is used up, there are none.
        if (!total.IsKnown && CarbohydrateLeft() is < DifferenceGrams) total = None("the carbohydrate leaves no room for them");
        foreach (var part in BalanceParts.Polyols)
            Set(part, !total.IsKnown ? PartContent.Unknown
                : part == (kind.PolyolsAre ?? BalancePart.UnsplitPolyols) ? total
                : total.Per100Grams == 0 || kind.PolyolsAre is not null || part == BalancePart.UnsplitPolyols ? None("none beside the total") : PartContent.Unknown);
    }

    /// <summary>Milk, cocoa, egg, gelling agents: what is left is their solids, and protein, fibre and ash are inside.</summary>
    private void SetSolids()
    {
        foreach (var inside in new[] { BalancePart.HigherSaccharides, BalancePart.MilkSolids, BalancePart.CocoaSolids, BalancePart.EggYolkSolids, BalancePart.EggWhiteSolids, BalancePart.Protein,
            BalancePart.Starch, BalancePart.Fibre, BalancePart.GellingAgents, BalancePart.OrganicAcids, BalancePart.Ash }) SetNone(inside, $"counted in the solids of {kind.Name}");
        var left = 100 - this[BalancePart.Water] - SumOf(BalanceParts.Fats, BalancePart.UnsplitFat) - SumOf(BalanceParts.Sugars, BalancePart.UnsplitSugars)
            - SumOf(BalanceParts.Polyols, BalancePart.UnsplitPolyols) - this[BalancePart.Alcohol] - this[BalancePart.Salt];
        PartContent solids = double.IsNaN(left) ? PartContent.Unknown
            : new(Math.Max(0, left), "100 g less water, fat, sugars and salt", new("by difference", Evidence.Computed));
        if (kind.SolidsAre.Any(each => each.Part == BalancePart.CocoaSolids)) SetCocoa(solids);
        else foreach (var (part, percent) in kind.SolidsAre) Set(part, solids with { Per100Grams = solids.Per100Grams * percent / 100 });
    }

    /// <summary>Fat-free cocoa solids: cocoa less cocoa butter, and no more than water, fat and sugars leave.</summary>
    private void SetCocoa(PartContent left)
    {
        var byPercentage = ingredient.CocoaPercent - this[BalancePart.CocoaButter] is { } stated && !double.IsNaN(stated) && (ingredient.CocoaButterPercent is not null || kind.FatIs is [BalancePart.CocoaButter])
            ? new PartContent(Math.Max(0, stated), "cocoa percentage less cocoa butter", ingredient.Origin) : PartContent.Unknown;
        var hasOther = kind.SolidsAre.Count > 1;
        if (byPercentage.IsKnown && byPercentage.Per100Grams > left.Per100Grams + RoundingGrams)
            remarks.Add(string.Create(CultureInfo.InvariantCulture,
                $"{ingredient.Name}: {ingredient.CocoaPercent:0.#} % cocoa with {this[BalancePart.CocoaButter]:0.#} % cocoa butter would be {byPercentage.Per100Grams:0.#} g of fat-free cocoa solids in 100 g, its other figures leave {left.Per100Grams:0.#} g, which is taken"));
        var cocoa = !byPercentage.IsKnown ? hasOther ? PartContent.Unknown : left
            : !left.IsKnown || byPercentage.Per100Grams <= left.Per100Grams ? byPercentage : left;
        Set(BalancePart.CocoaSolids, cocoa);
        if (hasOther) Set(BalancePart.MilkSolids, left with { Per100Grams = left.Per100Grams - cocoa.Per100Grams });
    }

    /// <summary>Everything else: protein, starch, fibre, acids and ash as stated.</summary>
    private void SetApart()
    {
        foreach (var none in new[] { BalancePart.MilkSolids, BalancePart.CocoaSolids, BalancePart.EggYolkSolids, BalancePart.EggWhiteSolids, BalancePart.GellingAgents })
            Set(none, ReferenceEquals(kind, IngredientKind.Unknown) && ingredient.Profile is null ? PartContent.Unknown : None("none by its kind"));
        SetStated(BalancePart.Protein, "PROCNT");
        SetStated(BalancePart.Fibre, "FIBTG");
        if (Stated("ASH") is { IsKnown: true } ash) Set(BalancePart.Ash, ash with { Per100Grams = Math.Max(0, ash.Per100Grams - (double.IsNaN(this[BalancePart.Salt]) ? 0 : this[BalancePart.Salt])) });
        if (kind.CarbohydrateIs is { } open && !_parts[(int)open].IsKnown && CarbohydrateLeft() is { } left)
            Set(open, new(Math.Max(0, left), "carbohydrate that nothing else accounts for", new("by difference", Evidence.Computed)));
        else if (kind.CarbohydrateIs == BalancePart.HigherSaccharides && ingredient.Profile?["CHOCDF"].IsKnown != true && ingredient.SolidsPercent is { } solids)
            Set(BalancePart.HigherSaccharides, new(Math.Max(0, solids - SumOf(BalanceParts.Sugars, BalancePart.UnsplitSugars)), "solids of the sheet less sugars", ingredient.Origin));
        foreach (var part in new[] { BalancePart.Starch, BalancePart.Fibre, BalancePart.OrganicAcids })
            if (!_parts[(int)part].IsKnown && CarbohydrateLeft() is < RoundingGrams) SetNone(part, "the carbohydrate leaves no room for it");
        if (!_parts[(int)BalancePart.HigherSaccharides].IsKnown && kind.CarbohydrateIs != BalancePart.HigherSaccharides && _parts[(int)BalancePart.UnsplitSugars].IsKnown)
            SetNone(BalancePart.HigherSaccharides, "none by its kind");
    }

    /// <summary>Carbohydrate, by difference, less all that is known of it; null where the total or the sugars are not known.</summary>
    private double? CarbohydrateLeft()
    {
        var hasFibre = Stated("CHOCDF").IsKnown;
        if (Stated(hasFibre ? "CHOCDF" : "CHOAVLDF") is not { IsKnown: true } total || !_parts[(int)BalancePart.UnsplitSugars].IsKnown) return null;
        BalancePart[] others = [BalancePart.HigherSaccharides, BalancePart.Starch, BalancePart.OrganicAcids, .. BalanceParts.Polyols];
        var fibre = hasFibre && Stated("FIBTG") is { IsKnown: true } stated ? stated.Per100Grams : 0;
        return total.Per100Grams - fibre - SumOf(BalanceParts.Sugars, BalancePart.UnsplitSugars) - others.Where(part => _parts[(int)part].IsKnown).Sum(part => this[part]);
    }

    // A kind's total is known as soon as what is not split of it is.
    private double SumOf(IReadOnlyList<BalancePart> kindsOfOne, BalancePart unsplit) =>
        _parts[(int)unsplit].IsKnown ? kindsOfOne.Where(part => _parts[(int)part].IsKnown).Sum(part => this[part]) : double.NaN;

    private void SetStated(BalancePart part, string tag)
    {
        if (Stated(tag) is { IsKnown: true } stated) Set(part, stated);
        else if (kind.HasNone(part)) SetNone(part, "none by its nature");
    }

    private PartContent Stated(string tag) => ingredient.Profile?[tag] is { IsKnown: true } content ? new(content.Per100Grams, "as stated", content.Source) : PartContent.Unknown;

    private void Set(BalancePart part, PartContent content) => _parts[(int)part] = content;

    private void SetNone(BalancePart part, string how) => Set(part, None(how));

    private PartContent None(string how) => new(0, how, kind.Source);
}
