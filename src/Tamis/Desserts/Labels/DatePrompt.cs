using Tamis.Labels;
using Tamis.Physics;

namespace Tamis.Desserts;

/// <summary>What a component says about how long a food keeps.</summary>
/// <param name="Component">The component.</param>
/// <param name="WaterActivity">What the models say of its water activity.</param>
/// <param name="Measured">What was measured of it; null where nothing was.</param>
/// <param name="HottestCelsius">The hottest step that the method writes; null where it writes none.</param>
/// <param name="MeasuredPh">Its acidity, where it was measured.</param>
public sealed record KeepingFigure(string Component, WaterActivityEstimate WaterActivity, double? Measured, double? HottestCelsius, double? MeasuredPh)
{
    /// <summary>The water activity to look at: measured where it was, or else predicted; null where neither is there.</summary>
    public double? Ratio => Measured ?? (WaterActivity.Predicted.IsKnown ? WaterActivity.Predicted.Value : null);
}

/// <summary>What a competent person needs to decide which date mark a food takes: the kit lays it out and never decides it.</summary>
public sealed record DatePrompt
{
    /// <summary>What must stand beside it.</summary>
    public const string Deferral = "Which date a food takes, and how long it keeps, is decided by a competent person from a study of it or a model that holds for it: the kit never sets a date.";

    /// <summary>The components that are put together, the one with the highest water activity first, those of which nobody knows it last.</summary>
    public required IReadOnlyList<KeepingFigure> Components { get; init; }

    /// <summary>The components of which nobody knows the water activity.</summary>
    public IReadOnlyList<string> NotKnown => [.. Components.Where(each => each.Ratio is null).Select(each => each.Component)];

    /// <summary>The groups of microbes that the water of the moistest component does not stop, the highest limit first.</summary>
    public required IReadOnlyList<MicrobialLimit> NotStopped { get; init; }

    /// <summary>The limit under which some countries ask for no chilling on account of pathogens, where the moistest component is at it or over it; null where it is under.</summary>
    public required MicrobialLimit? OverChillingLimit { get; init; }

    /// <summary>The mark that <c>dessert.csv</c> names; null where it names none.</summary>
    public required string? Asked { get; init; }

    /// <summary>The rule of that mark; null where the rule set has none of this name.</summary>
    public required DateRule? Mark { get; init; }

    /// <summary>How many days <c>dessert.csv</c> gives it; null where it says nothing.</summary>
    public required int? Days { get; init; }

    /// <summary>How the law has a date of so many days written; null where it fixes no form or the days are not known.</summary>
    public required DateRule? Form { get; init; }

    /// <summary>How to keep it, as <c>dessert.csv</c> says; null where it says nothing.</summary>
    public required string? Keep { get; init; }

    /// <summary>What else the rule set says of dates.</summary>
    public required IReadOnlyList<DateRule> Rules { get; init; }

    /// <summary>The prompt for a trial.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="rules">The rule set's folder name.</param>
    public static DatePrompt Of(Dessert dessert, string trial, string rules)
    {
        var set = DateRules.Of(KitData.Rules(rules));
        var batch = dessert.Trial(trial);
        var physics = dessert.Physics(trial);
        KeepingFigure[] components = [.. batch.Placed.Select(placed => physics.Of(placed.Name)).Select(own => new KeepingFigure(own.Name, own.WaterActivity,
            MeasuredOf(dessert, batch.Trial, own.Name, "water activity"), own.Looked.HottestCelsius, MeasuredOf(dessert, batch.Trial, own.Name, "pH"))).OrderByDescending(each => each.Ratio ?? double.NegativeInfinity)];
        var highest = components.Select(each => each.Ratio).Max();
        var days = dessert.Facts.Number("shelf_days", batch.Trial) is { } number ? (int?)number : null;
        var asked = dessert.Facts.Text("date_kind", batch.Trial);
        var form = days is { } shelf ? set.Form(shelf) : null;
        return new()
        {
            Components = components,
            NotStopped = highest is { } ratio ? [.. MicrobialLimit.Kit.Where(limit => limit.IsGrowth && limit.WaterActivityRatio <= ratio)] : [],
            OverChillingLimit = MicrobialLimit.Kit.FirstOrDefault(limit => !limit.IsGrowth && limit.Short.Contains("chilling", StringComparison.Ordinal) && limit.WaterActivityRatio <= highest),
            Asked = asked, Mark = asked is null ? null : set.Mark(asked), Days = days, Form = form, Keep = dessert.Facts.Text("keep", batch.Trial),
            Rules = [.. set.All.Where(rule => rule.Kind is DateRuleKind.Mark or DateRuleKind.Exemption or DateRuleKind.Also)],
        };
    }

    private static double? MeasuredOf(Dessert dessert, string trial, string component, string what) =>
        dessert.Measured.LastOrDefault(each => Names.Same(each.Trial, trial) && Names.Same(each.Component, component) && Names.Same(each.What, what))?.Value;
}
