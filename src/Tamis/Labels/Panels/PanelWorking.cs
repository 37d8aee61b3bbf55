using System.Globalization;
using Tamis.Composition;
using Tamis.Losses;

namespace Tamis.Labels;

/// <summary>Builds the working behind a line of a nutrition panel, through the same sums that made the line.</summary>
internal static class PanelWorking
{
    private static readonly Source Sum = new("sum over the parts, by mass", Evidence.Computed);

    public static Working Of(PanelLine line)
    {
        var panel = line.Panel;
        var rules = panel.Rules;
        var (value, unit) = (line.Amount.Known, line.Unit);
        Working notRounded = new(line.IsKnownWell ? $"{line.Key} {panel.Basis.Words}, not rounded" : $"what is known of {line.Key} {panel.Basis.Words}", value, unit, Sum)
        {
            From = [Whole(line), Finished(panel.Mixture), .. panel.Basis.MassGrams is { } grams ? [new Working($"the panel is {panel.Basis.Words}", grams, "g", new(rules.Act, Evidence.Law))] : Array.Empty<Working>()],
        };
        if (line.Rounded is not { } rounded)
        {
            var policy = rules.SettingOrigins["known_share_percent"];
            return new($"{line.Key}, not declared: {line.CoverageInWords}, {Number(rules.KnownSharePercent)}\u202f% is asked for", double.NaN, unit, policy.Source) { From = [notRounded] };
        }
        var band = rounded.Band;
        Working declared = new($"{line.Key} {panel.Basis.Words}, declared as {rounded.Text}: {band.InWords} ({band.Origin.StrengthInWords})",
            rounded.Number is { } number ? (double)number : value, line.Figure.IsPercentOnly ? "%" : unit, band.Origin.Source) { From = [notRounded] };
        return declared with { From = [notRounded, .. line.Percent is { } percent ? [PercentOf(line, percent)] : Array.Empty<Working>(), .. line.Spread is { } spread ? [RangeOf(line, spread)] : Array.Empty<Working>()] };
    }

    private static Working RangeOf(PanelLine line, FigureSpread spread)
    {
        Source source = new("JCGM 100:2008", Evidence.Published, "5.1.2");
        var shown = line.Range is null ? $"; less than the {Number(line.Panel.Rules.KnownSpreadPercent)}\u202f% for which a range is shown" : "";
        return new($"width of the range, to first order: {spread.InWords}{shown}", spread.Range.Width, line.Unit, source)
        {
            From = [new("lower end", spread.Range.Low, line.Unit, source), new("upper end", spread.Range.High, line.Unit, source)],
        };
    }

    private static Working PercentOf(PanelLine line, RoundedAmount percent)
    {
        var reference = line.Reference!;
        var shown = reference.PercentFrom == PercentFrom.Declared ? line.Rounded?.ShownNumber : null;
        var amount = shown is { } declared ? (double)declared : Math.Max(0, line.Amount.Known);
        return new($"of the reference value{(shown is null ? "" : ", from the amount as declared")}, printed as {percent.Text}: {percent.Band.InWords} ({percent.Band.Origin.StrengthInWords})", amount / reference.Value * 100, "%", percent.Band.Origin.Source)
        {
            From = [new($"reference value of {line.Key} ({reference.Origin.StrengthInWords})", reference.Value, reference.Unit, reference.Origin.Source)],
        };
    }

    private static Working Whole(PanelLine line)
    {
        Working[] parts = [.. line.Panel.Mixture.Parts.Select(part => Part(line, part))];
        return new($"{line.Key} in the whole, {line.CoverageInWords}", parts.Where(part => !double.IsNaN(part.Value)).Sum(part => part.Value), line.Unit, Sum) { From = parts };
    }

    private static Working Finished(Mixture mixture) =>
        new("finished mass", mixture.FinishedGrams, "g", new("what is left of the lines, less the water that left", Evidence.Computed))
        {
            From = [new("the lines as weighed in, less what stayed in the bowl, was trimmed and the like", mixture.WeighedInGrams, "g", Sum), new("water that left, and nothing else with it", mixture.WaterLostGrams, "g", Sum)],
        };

    private static Working Part(PanelLine line, MixturePart part)
    {
        var ingredient = part.Ingredient;
        Working weighed = new($"{ingredient.Name} as weighed in, less its part of what stayed behind", part.MassGrams, "g", part.Origin);
        if (ingredient.Profile is not { } profile)
            return new($"{line.Key} of {ingredient.Name}: not known, neither a food nor a document gives figures", double.NaN, line.Unit, ingredient.Origin ?? part.Origin) { From = [weighed] };
        var (per100Grams, isKnown) = FigureSum.Per100Grams(line.Figure, profile, line.Panel.Rules.ProteinFactor);
        Working[] summands = [.. line.Figure.Summands.Select(summand => Of(summand, profile, part, line))];
        var isSimple = line.Figure.Summands is [{ Factor: 1 }];
        return new($"{line.Key} of {ingredient.Name}{(isKnown ? "" : summands.Length > 1 ? ", as far as known" : ": not known")}",
            isKnown || summands.Length > 1 ? part.MassGrams * per100Grams / 100 : double.NaN, line.Unit, Sum)
        {
            From = isSimple ? [weighed, .. summands[0].From] : [weighed, .. summands],
        };
    }

    private static Working Of(Summand summand, NutrientProfile profile, MixturePart part, PanelLine line)
    {
        if (summand.WayFor(profile) is not { } way)
        {
            var lacking = summand.Formula.Ways[0].Where(term => !term.CountsAsNone && !profile[term.Tag].IsKnown).Select(term => Word(term.Tag, profile, line));
            Working unknown = new($"{string.Join(" and ", lacking)} in 100 g of {profile.Name}: not stated", double.NaN, line.Unit, new(profile.Name, Evidence.Computed));
            return new($"{summand.Word}: not known", double.NaN, line.Unit, summand.Origin.Source) { From = [unknown] };
        }
        var per100Grams = FigureSum.Of(way, profile, line.Panel.Rules.ProteinFactor);
        var step = summand.Factor == 1 ? summand.Word : $"{summand.Word}, {Number(summand.Factor)} {line.Unit} a gram ({summand.Origin.StrengthInWords})";
        return new(step, part.MassGrams * per100Grams / 100 * summand.Factor, line.Unit, summand.Origin.Source) { From = way is []
            ? [new($"no {Word(summand.PartOf!, profile, line)} in {profile.Name}, so none of this part of it", 0, line.Unit, profile[summand.PartOf!].Source ?? new(profile.Name, Evidence.Computed))]
            : [.. way.SelectMany(term => Contents(term, profile, line)), .. Held(summand, way, profile, line)] };
    }

    // A sum of estimates may take more away than there is.
    private static IEnumerable<Working> Held(Summand summand, IReadOnlyList<FormulaTerm> way, NutrientProfile profile, PanelLine line)
    {
        if (FigureSum.IsHeld(way, profile, line.Panel.Rules.ProteinFactor, out var sum))
            yield return new($"{summand.Word} in 100 g of {profile.Name}: by these figures {Number(-sum)} g more would be taken away than there is, held at 0", 0, "g", new("a content is never below 0", Evidence.Computed));
    }

    private static IEnumerable<Working> Contents(FormulaTerm term, NutrientProfile profile, PanelLine line)
    {
        var content = profile[term.Tag];
        var word = Word(term.Tag, profile, line);
        var unit = profile.Nutrients.IndexOf(term.Tag) is var column and >= 0 ? profile.Nutrients.All[column].Unit : "g";
        if (!content.IsKnown)
        {
            yield return new($"{word} in 100 g of {profile.Name}: not stated, counted as none", 0, unit, line.Figure.Origin.Source);
            yield break;
        }
        var kind = content.State switch
        {
            ContentState.AssumedZero => ", taken as zero by the nature of the food",
            ContentState.Estimated => ", an estimate",
            ContentState.BelowLimit => ", stated as below a limit, taken as half of it",
            ContentState.Trace => ", a trace",
            _ => "",
        };
        var taken = term.Coefficient < 0 ? ", taken away" : term.Coefficient == 1 ? "" : $", × {Number(term.Coefficient)}";
        yield return new($"{word} in 100 g of {profile.Name}{kind}{taken}", content.Per100Grams, unit, content.Source ?? new(profile.Name, Evidence.Computed));
        // Where a table used the law's own factor, or there is no protein, nothing was converted.
        if (term.Tag != "PROCNT" || content.Per100Grams == 0 || line.Panel.Rules.ProteinFactor is not { } factor || profile.NitrogenFactor == factor) yield break;
        var origin = line.Panel.Rules.SettingOrigins["protein_factor"].Source;
        yield return profile.NitrogenFactor is { } used and > 0
            ? new($"the protein was published as nitrogen × {Number(used)}; the law’s factor", factor, "", origin)
            : new("nitrogen factor not stated, protein taken as published; the law’s factor", factor, "", origin);
    }

    private static string Word(string tag, NutrientProfile profile, PanelLine line) =>
        PanelAssumptions.WordFor(tag, line.Panel.Rules.Declaration.SelectMany(figure => figure.Summands), profile);

    private static string Number(double number) => number.ToString("0.####", CultureInfo.InvariantCulture);
}
