namespace Tamis.Tasting;

/// <summary>How often a trial stood in a place.</summary>
/// <param name="Trial">The trial.</param>
/// <param name="Counts">How often it stood in the first place, the second and so on.</param>
public sealed record PlaceCounts(string Trial, IReadOnlyList<int> Counts);

/// <summary>How often a trial was served straight after each trial.</summary>
/// <param name="Trial">The trial that came after.</param>
/// <param name="Before">How often each trial of the plan came straight before it, in the order of <see cref="PlanBalance.Trials"/>.</param>
public sealed record NeighbourCounts(string Trial, IReadOnlyList<int> Before);

/// <summary>How evenly a plan spreads what could favour a trial: its place, and what was tasted before it.</summary>
/// <param name="Trials">The trials, in the order in which they are first named.</param>
/// <param name="Places">How often each trial stands in each place.</param>
/// <param name="Neighbours">How often each trial comes straight after each other.</param>
/// <param name="Together">How many assessors get both trials of a pair, the fewest and the most of all pairs.</param>
public sealed record PlanBalance(IReadOnlyList<string> Trials, IReadOnlyList<PlaceCounts> Places, IReadOnlyList<NeighbourCounts> Neighbours, (int Fewest, int Most) Together)
{
    /// <summary>Whether every trial stands in every place equally often.</summary>
    public bool IsPlaceBalanced => Places.SelectMany(place => place.Counts).Distinct().Count() <= 1;

    /// <summary>Whether every trial comes straight after every other equally often; a trial after itself does not count.</summary>
    public bool IsNeighbourBalanced => OtherNeighbours.Distinct().Count() <= 1;

    /// <summary>The fewest and the most times that a trial stands in a place.</summary>
    public (int Fewest, int Most) PlaceSpread => Spread(Places.SelectMany(place => place.Counts));

    /// <summary>The fewest and the most times that a trial comes straight after another.</summary>
    public (int Fewest, int Most) NeighbourSpread => Spread(OtherNeighbours);

    private IEnumerable<int> OtherNeighbours => Neighbours.SelectMany((neighbour, trial) => neighbour.Before.Where((_, before) => before != trial));

    /// <summary>Counts a plan. Servings without a place are left out of places and neighbours.</summary>
    public static PlanBalance Of(IReadOnlyList<Serving> servings)
    {
        string[] trials = [.. servings.Select(serving => serving.Trial).Distinct(Names.Comparer)];
        var orders = servings.Where(serving => serving.Position is not null).GroupBy(serving => serving.Assessor)
            .Select(group => group.OrderBy(serving => serving.Position).Select(serving => Array.IndexOf(trials, serving.Trial)).ToArray()).ToArray();
        var places = new int[trials.Length, orders.Select(order => order.Length).DefaultIfEmpty(0).Max()];
        var neighbours = new int[trials.Length, trials.Length];
        foreach (var order in orders)
            for (var place = 0; place < order.Length; place++)
            {
                places[order[place], place]++;
                if (place > 0) neighbours[order[place], order[place - 1]]++;
            }
        var sets = servings.GroupBy(serving => serving.Assessor).Select(group => group.Select(serving => serving.Trial).ToHashSet()).ToArray();
        var together = Spread(from first in Enumerable.Range(0, trials.Length) from second in Enumerable.Range(first + 1, trials.Length - first - 1)
                              select sets.Count(set => set.Contains(trials[first]) && set.Contains(trials[second])));
        return new(trials, [.. trials.Select((trial, at) => new PlaceCounts(trial, Row(places, at)))], [.. trials.Select((trial, at) => new NeighbourCounts(trial, Row(neighbours, at)))], together);
    }

    private static int[] Row(int[,] counts, int row) => [.. Enumerable.Range(0, counts.GetLength(1)).Select(column => counts[row, column])];

    private static (int, int) Spread(IEnumerable<int> counts) => counts.ToArray() is { Length: > 0 } all ? (all.Min(), all.Max()) : (0, 0);
}
