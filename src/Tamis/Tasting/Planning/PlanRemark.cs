namespace Tamis.Tasting;

/// <summary>Something about a plan that its maker should look at before anybody tastes.</summary>
/// <param name="Text">What, why it matters and what to do.</param>
/// <param name="Source">Where the rule comes from.</param>
public sealed record PlanRemark(string Text, Source Source)
{
    /// <summary>Everything to look at in a plan.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="asked">What the ballots ask.</param>
    /// <param name="others">The other tastings of the dessert, with what each served.</param>
    /// <param name="policy">The kit's customs.</param>
    public static IReadOnlyList<PlanRemark> Of(TastingPlan plan, IReadOnlyList<SensoryAttribute> asked, TastingLog others, TastingPolicy policy)
    {
        List<PlanRemark> remarks = [];
        var session = plan.Session;
        var each = plan.Servings.GroupBy(serving => serving.Assessor).Select(group => group.Count()).DefaultIfEmpty(0).Max();
        if (each > policy.MostServingsEach)
            Add($"{each} samples for each assessor: above about {policy.MostServingsEach} sweet ones tongues tire and the last places are scored flat. Share the trials out over two sessions, with the same control in both.", Practice);

        string[] liked = [.. asked.Where(attribute => attribute.Kind == AttributeKind.Liking).Select(attribute => attribute.Name)];
        string[] strong = [.. asked.Where(attribute => attribute.Kind == AttributeKind.Intensity).Select(attribute => attribute.Name)];
        if (session.Test is null && session.AreTrained == true && liked.Length > 0)
            Add($"Trained assessors are asked for {And(liked)}: training changes what one likes, so they no longer stand for guests. Ask guests for it, and the trained ones for intensities.", Practice);
        if (session.Test is null && session.AreTrained == false && strong.Length > 0)
            Add($"Untrained assessors are asked for {And(strong)}: without training each has a scale of his own, so differences show only within assessors and drown sooner. Train them with references, or ask for liking, just right and words.", Practice);
        if (session.Test is null && session.AreTrained is null && liked.Length > 0 && strong.Length > 0)
            Add($"The same assessors are asked for {And(liked)} and for {And(strong)}, and tastings.csv does not say whether they are trained (column trained: yes or no). Liking is for guests, intensity for trained assessors.", Practice);

        if (session.Test is null && session.Control is null)
            Add("No control: without a trial that is served every time, this tasting cannot be linked with any other. Name one in tastings.csv and serve it again next time.", Practice);
        string[] before = [.. others.Servings.Where(serving => !Names.Same(serving.Tasting, session.Name)).Select(serving => serving.Trial).Distinct(Names.Comparer)];
        if (before.Length > 0 && !session.Trials.Any(trial => before.Contains(trial, Names.Comparer)))
            Add("None of these trials was served in another tasting, so nothing links this one with what is known already.", Practice);

        string[] unmade = [.. session.Trials.Where(trial => plan.Servings.Any(serving => Names.Same(serving.Trial, trial) && serving.Make is null))];
        if (unmade.Length > 0)
            Add($"trials.csv has no make of {And(unmade)} on or before the day: write the date of the make that will be served, so that a batch can be told from its formula.", Practice);
        if (plan.Balance is { Together.Fewest: 0 } && session.Test is null)
            Add("Some trials never meet on one assessor’s table: they can be compared only by way of others. Add servings or assessors.", Practice);
        return remarks;

        void Add(string text, Source source) => remarks.Add(new(text, source));
    }

    private static Source Practice { get; } = new("common practice, no source", Evidence.Practice);

    private static string And(IReadOnlyList<string> names) => names.Count < 2 ? string.Concat(names) : $"{string.Join(", ", names.Take(names.Count - 1))} and {names[^1]}";
}
