namespace Tamis.Tasting;

/// <summary>Who gets which trial in which place under which code: the plan of one tasting.</summary>
/// <param name="Session">The tasting.</param>
/// <param name="Servings">Every serving, assessor by assessor in the order of places.</param>
public sealed record TastingPlan(TastingSession Session, IReadOnlyList<Serving> Servings)
{
    /// <summary>The codes of each trial, in the order of the session's trials; a trial served several times has several.</summary>
    public IReadOnlyList<(string Trial, IReadOnlyList<string> Codes)> Codes =>
        [.. Servings.GroupBy(serving => serving.Trial).OrderBy(group => Array.IndexOf([.. Session.Trials], group.Key))
            .Select(group => (group.Key, (IReadOnlyList<string>)[.. group.Select(serving => serving.Code).Distinct().Order(StringComparer.Ordinal)]))];

    /// <summary>How evenly places and neighbours are spread.</summary>
    public PlanBalance Balance => PlanBalance.Of(Servings);

    /// <summary>The rows of <c>servings.csv</c>.</summary>
    public IReadOnlyList<IReadOnlyDictionary<string, object?>> ServingRows =>
        [.. Servings.Select(serving => new Dictionary<string, object?>
        {
            ["tasting"] = serving.Tasting, ["assessor"] = serving.Assessor, ["position"] = serving.Position, ["code"] = serving.Code, ["trial"] = serving.Trial, ["make"] = serving.Make,
        })];

    /// <summary>The rows of <c>scores.csv</c> to fill: who and under which code, and a blank for every answer.</summary>
    /// <param name="attributes">What the ballots ask.</param>
    public IReadOnlyList<IReadOnlyDictionary<string, object?>> ScoreRowsToFill(IReadOnlyList<SensoryAttribute> attributes) =>
        [.. Servings.Select(serving => (IReadOnlyDictionary<string, object?>)new Dictionary<string, object?>(
            [new("tasting", serving.Tasting), new("assessor", serving.Assessor), new("code", serving.Code), .. attributes.Select(attribute => new KeyValuePair<string, object?>(attribute.Name, null)), new("remark", null)]))];
}
