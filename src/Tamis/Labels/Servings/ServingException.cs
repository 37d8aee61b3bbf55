namespace Tamis.Labels;

/// <summary>Something by which a serving cannot be made.</summary>
/// <param name="Key">The key of <c>dessert.csv</c> to mend.</param>
/// <param name="Found">What stands there; empty where nothing does.</param>
/// <param name="Expected">What the law needs.</param>
public sealed record ServingProblem(string Key, string Found, string Expected)
{
    /// <summary>The sentence that says what to mend.</summary>
    public override string ToString() => Found.Length == 0 ? $"{Key} is missing: expected {Expected}." : $"{Key} is '{Found}': expected {Expected}.";
}

/// <summary>A serving that cannot be made of a food, with everything that must be mended.</summary>
public sealed class ServingException : FormatException
{
    /// <summary>Gathers all problems.</summary>
    public ServingException(IReadOnlyList<ServingProblem> problems)
        : base(string.Join('\n', problems)) => Problems = problems;

    /// <summary>Everything that must be mended.</summary>
    public IReadOnlyList<ServingProblem> Problems { get; }
}
