namespace Tamis.Composition;

/// <summary>How a missing content was filled in.</summary>
public enum ImputationMethod
{
    /// <summary>From foods that are like it.</summary>
    SimilarFoods,
    /// <summary>As what the other constituents leave of 100 g.</summary>
    Difference,
    /// <summary>From what it is made of.</summary>
    Recipe,
}

/// <summary>A missing content filled in on request: an estimate with its interval and the way it was worked out.</summary>
/// <param name="Tag">The nutrient's tagname.</param>
/// <param name="Method">How it was filled in.</param>
/// <param name="Content">The estimate: its state and its source say that it is one.</param>
/// <param name="Working">How it was worked out.</param>
public sealed record Imputed(string Tag, ImputationMethod Method, Content Content, Working Working)
{
    internal static Imputed Of(Nutrient nutrient, ImputationMethod method, double per100Grams, Interval? range, string how, IEnumerable<(string Step, Content Content)> from)
    {
        Source source = new(method switch
        {
            ImputationMethod.SimilarFoods => "estimate by similar foods",
            ImputationMethod.Difference => "estimate by difference",
            _ => "estimate by recipe",
        }, Evidence.Estimate, how);
        var value = Derivation.Rounded(per100Grams);
        return new(nutrient.Tag, method, new(ContentState.Estimated, value, range, source), new($"{nutrient.Word}, {source.Key}", value, nutrient.Unit, source)
        {
            From = [.. from.Select(term => new Working(term.Step, term.Content.Per100Grams, nutrient.Unit, term.Content.Source!))],
        });
    }
}
