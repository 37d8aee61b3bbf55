using Tamis.Statistics.Discrimination;

namespace Tamis.Tasting;

/// <summary>A test of whether two trials can be told apart: plates come in sets, and the assessor picks from each set.</summary>
/// <param name="Word">The word of the column <c>kind</c>.</param>
/// <param name="SetSize">How many plates are in a set.</param>
/// <param name="PicksEach">How many of a set the assessor picks.</param>
/// <param name="Guess">The chance of a right answer by guessing, 0 to 1.</param>
/// <param name="Question">What the assessor is asked where <c>attributes.csv</c> has no question.</param>
/// <remarks>Triangle, duo-trio, paired comparison, two and three alternatives, tetrad: the forced-choice methods of ISO 4120, ISO 10399, ISO 5495 and their kin.</remarks>
public sealed record DifferenceTest(string Word, int SetSize, int PicksEach, double Guess, string Question)
{
    /// <summary>Three plates, two alike: which is the odd one?</summary>
    public static DifferenceTest Triangle { get; } = new("triangle", 3, 1, 1.0 / 3, "Two of the three are the same. Which is the odd one?")
    {
        Model = ForcedChoice.Triangle,
        IsSet = plates => plates.Distinct().Count() == 2,
        IsRightPick = (plates, picked) => plates.Count(each => each == plates[picked[0]]) == 1,
    };

    /// <summary>A reference and two plates: which of the two is like the reference?</summary>
    public static DifferenceTest DuoTrio { get; } = new("duo-trio", 3, 1, 0.5, "The first is the reference. Which of the other two is like it?")
    {
        Model = ForcedChoice.DuoTrio,
        IsSet = plates => plates[1] != plates[2],
        IsRightPick = (plates, picked) => picked[0] != 0 && plates[picked[0]] == plates[0],
    };

    /// <summary>Two plates: which has more of what is asked?</summary>
    public static DifferenceTest Paired { get; } = new("paired", 2, 1, 0.5, "Which of the two has more of it?");

    /// <summary>Two plates of which the second trial of the sheet is known to be stronger: which is it?</summary>
    public static DifferenceTest TwoAlternatives { get; } = new("two alternatives", 2, 1, 0.5, "Which of the two is stronger?") { Model = ForcedChoice.TwoAlternatives };

    /// <summary>Three plates, two of the first trial and one of the second, which is known to be stronger: which is it?</summary>
    public static DifferenceTest ThreeAlternatives { get; } = new("three alternatives", 3, 1, 1.0 / 3, "Which of the three is the strongest?")
    {
        Model = ForcedChoice.ThreeAlternatives,
        IsSet = plates => plates.Count(isSecond => isSecond) == 1,
    };

    /// <summary>Four plates, two of each trial: which two belong together?</summary>
    public static DifferenceTest Tetrad { get; } = new("tetrad", 4, 2, 1.0 / 3, "Two are of one kind and two of another. Tick two that belong together.")
    {
        Model = ForcedChoice.Tetrad,
        IsRightPick = (plates, picked) => plates[picked[0]] == plates[picked[1]],
    };

    /// <summary>Every test that the kit knows.</summary>
    public static IReadOnlyList<DifferenceTest> All { get; } = [Triangle, DuoTrio, Paired, TwoAlternatives, ThreeAlternatives, Tetrad];

    /// <summary>How often answers are right at a distance, by Thurstone's model; null for a paired comparison, where there is no right answer.</summary>
    public ForcedChoice? Model { get; init; }

    // Which plates may stand together in a set: unless a test says otherwise as many of the one trial as of the other.
    private Func<IReadOnlyList<bool>, bool> IsSet { get; init; } = plates => plates.Count(isSecond => isSecond) * 2 == plates.Count;

    // Whether a pick of the number that is asked for is right: unless a test says otherwise it is of the second trial.
    private Func<IReadOnlyList<bool>, int[], bool> IsRightPick { get; init; } = (plates, picked) => plates[picked[0]];

    /// <summary>The test of a word, or null where the word names none.</summary>
    public static DifferenceTest? Of(string word) => All.FirstOrDefault(test => Names.Same(test.Word, word));

    /// <summary>The trials of the two kinds of plates in every order that a set may have; true is a plate of the second trial.</summary>
    /// <remarks>A triangle has six orders, of which each trial is odd in three; a duo-trio begins with its reference; a tetrad has six.</remarks>
    public IReadOnlyList<IReadOnlyList<bool>> Orders() => [.. Enumerable.Range(0, 1 << SetSize)
        .Select(bits => (IReadOnlyList<bool>)[.. Enumerable.Range(0, SetSize).Select(place => (bits >> (SetSize - 1 - place) & 1) == 1)])
        .Where(IsSet)];

    /// <summary>Whether an answer is right.</summary>
    /// <param name="isSecond">Which plates of the set, in order of their places, are of the second trial.</param>
    /// <param name="picked">The places that were picked, from 0.</param>
    public bool IsRight(IReadOnlyList<bool> isSecond, IReadOnlyCollection<int> picked) => picked.Count == PicksEach && IsRightPick(isSecond, [.. picked]);
}
