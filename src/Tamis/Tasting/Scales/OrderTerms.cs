using Tamis.Statistics.Models;

namespace Tamis.Tasting;

/// <summary>What a model of marks evens out for the order of serving: the place and, where <see cref="Tasting.CarryOver"/> says so, what came just before.</summary>
internal sealed class OrderTerms
{
    /// <summary>The place in the order of serving, from 1 on.</summary>
    public const string Place = "place";

    /// <summary>The trial that was tasted just before.</summary>
    public const string Before = "before";

    /// <summary>Everything that can be evened out, as terms of a formula.</summary>
    public const string All = $" + {Place} + {First} + {Before}";

    private const string First = "first";

    private readonly int?[] _places;
    private readonly string?[] _before;

    private OrderTerms(CarryOver carryOver, int?[] places, string?[] before) => (CarryOver, _places, _before) = (carryOver, places, before);

    /// <summary>Whether what came just before is evened out.</summary>
    public CarryOver CarryOver { get; }

    /// <summary>Whether the places are known and differ.</summary>
    public bool HasPlaces => CarryOver.Standing != CarryOverStanding.OrderUnknown;

    /// <summary>What is evened out, as terms of a formula; empty where the order is not known.</summary>
    public string Formula => CarryOver.Standing == CarryOverStanding.EvenedOut ? All : HasPlaces ? $" + {Place}" : "";

    /// <summary>The terms of the scores of a tasting.</summary>
    public static OrderTerms Of(TastingLog log, TastingSession session, Score[] scores, TastingPolicy policy)
    {
        var before = CarryOver.BeforeEach(log, session, scores);
        return new(CarryOver.Of(scores, before, policy), [.. scores.Select(score => score.Serving.Position)], before);
    }

    /// <summary>The columns that the terms need, beside those of the scores.</summary>
    /// <param name="data">The columns of the scores, in their order.</param>
    /// <param name="level">How the model writes a trial.</param>
    public ModelData AddTo(ModelData data, Func<string, string> level)
    {
        var any = _before.OfType<string>().Min(StringComparer.Ordinal) ?? "";
        return data
            .WithNumbers(Place, [.. _places.Select(place => place ?? double.NaN)])
            // The first plate has nothing before it. It has an effect of its own, beside which it does not matter after which trial it is counted.
            .WithNumbers(First, [.. _before.Select(trial => trial is null ? 1.0 : 0)])
            .WithFactor(Before, [.. _before.Select(trial => level(trial ?? any))]);
    }
}
