namespace Tamis.Statistics.MixedModels;

/// <summary>The random effects given the data: best linear unbiased predictions.</summary>
internal static class Predictions
{
    public static IReadOnlyList<RandomEffect> Of(MixedCriterion criterion, double[] parameters, double[] solution, int term)
    {
        var (sums, levels) = (criterion.Sums, criterion.Sums.Random[term]);
        return term == sums.Taken ? Taken(criterion, parameters, solution) : [.. Enumerable.Range(0, levels.Count).SelectMany(level => Level(level))];

        IEnumerable<RandomEffect> Level(int level)
        {
            var start = sums.LevelBlock[term][level];
            return levels.Term.Effects.Select((effect, row) => new RandomEffect(levels.Names[level], effect,
                Enumerable.Range(0, row + 1).Sum(k => parameters[criterion.Factors.Index(term, row, k)] * solution[start + k])));
        }
    }

    // The levels that were taken out: what the sums of their rows leave over, drawn towards nil.
    private static List<RandomEffect> Taken(MixedCriterion criterion, double[] parameters, double[] solution)
    {
        var sums = criterion.Sums;
        var levels = sums.Random[sums.Taken];
        var factor = parameters[criterion.Factors.Index(sums.Taken, 0, 0)];
        var scale = new double[sums.Matrix.Size - 1];
        Array.Fill(scale, 1);
        foreach (var (term, start) in sums.BlockTerm.Zip(sums.BlockStart)) scale[start] = parameters[criterion.Factors.Index(term, 0, 0)];
        List<RandomEffect> effects = [];
        for (var level = 0; level < levels.Count; level++)
        {
            double left = 0;
            for (var at = sums.TakenStart[level]; at < sums.TakenStart[level + 1]; at++)
                left += sums.TakenColumns[at] is var column && column == sums.Matrix.Size - 1
                    ? sums.TakenSums[at]
                    : -sums.TakenSums[at] * scale[column] * solution[column];
            effects.Add(new(levels.Names[level], Models.ModelColumn.Intercept, factor * factor * left / (1 + factor * factor * sums.TakenRows[level])));
        }
        return effects;
    }
}
