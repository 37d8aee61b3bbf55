namespace Tamis.Tasting;

/// <summary>Many invented groups of people who only guess: what chance does by itself.</summary>
/// <param name="Answers">How many answers a group gives.</param>
/// <param name="Counts">How many groups had so many right answers, from 0 to <paramref name="Answers"/>.</param>
public sealed record GuessingClasses(int Answers, IReadOnlyList<int> Counts)
{
    /// <summary>How many groups there are.</summary>
    public int GroupCount => Counts.Sum();

    /// <summary>How many groups had so many right answers or more.</summary>
    public int AtLeast(int right) => Counts.Skip(Math.Max(0, right)).Sum();

    /// <summary>Lets groups guess: each answer is drawn by itself.</summary>
    /// <param name="answers">How many answers a group gives, more than 0.</param>
    /// <param name="choices">Among how many an answer is drawn: 3 for a triangle.</param>
    /// <param name="groups">How many groups, more than 0.</param>
    /// <param name="seed">The seed: the same gives the same groups.</param>
    public static GuessingClasses Draw(int answers, int choices, int groups, int seed)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(answers);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(groups);
        SeededOrder random = new(seed);
        var counts = new int[answers + 1];
        for (var group = 0; group < groups; group++) counts[Enumerable.Range(0, answers).Count(_ => random.Below(choices) == 0)]++;
        return new(answers, counts);
    }
}
