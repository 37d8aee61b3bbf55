using Tamis.Tables;

namespace Tamis.Tasting;

/// <summary>Makes the plan of a tasting from its row of <c>tastings.csv</c>.</summary>
public static class PlanMaker
{
    /// <summary>Makes the plan of a tasting: the same session and taken codes give the same plan, on every machine.</summary>
    /// <param name="session">What the row of <c>tastings.csv</c> asks for.</param>
    /// <param name="takenCodes">Codes of other tastings, which are not given again where others are left.</param>
    /// <param name="makeOf">Which make of a trial will be on the plates; null where it is not known.</param>
    /// <param name="problems">What the row lacks, each with what was expected; with any of them there is no plan.</param>
    public static TastingPlan? Make(TastingSession session, IEnumerable<string> takenCodes, Func<string, int?> makeOf, ICollection<CellProblem> problems)
    {
        if (!PlanNeeds.AreMet(session, problems)) return null;
        var random = new SeededOrder(session.Seed!.Value);
        var orders = session.Test is { } test ? SetOrders.Of(test, session, random) : ServingOrders.Of(session, random);
        // A trial has as many codes as one assessor gets servings of it; in a set for a test every plate of a trial needs its own.
        var codeCount = Enumerable.Range(0, session.Trials.Count).Select(trial => orders.Max(order => order.Count(each => each == trial))).ToArray();
        var codes = BlindCodes.Of(codeCount.Sum(), takenCodes, random);
        var firstCode = codeCount.Select((_, trial) => codeCount.Take(trial).Sum()).ToArray();
        Source origin = new("servings.csv", Evidence.Sheet, $"plan of {session.Name}");
        List<Serving> servings = [];
        for (var assessor = 0; assessor < orders.Count; assessor++)
        {
            // Which of its codes a trial comes under first is left to chance, so that a code says nothing of the place.
            var own = codeCount.Select((count, trial) => random.Shuffled([.. Enumerable.Range(firstCode[trial], count)])).ToArray();
            var met = new int[session.Trials.Count];
            for (var place = 0; place < orders[assessor].Count; place++)
            {
                var trial = orders[assessor][place];
                servings.Add(new(session.Name, session.Assessors[assessor], codes[own[trial][met[trial]++]], session.Trials[trial], origin) { Position = place + 1, Make = makeOf(session.Trials[trial]) });
            }
        }
        return new(session, servings);
    }
}
