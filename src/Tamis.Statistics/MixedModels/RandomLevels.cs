using System.Runtime.CompilerServices;
using Tamis.Statistics.Models;

namespace Tamis.Statistics.MixedModels;

/// <summary>A random term's levels as they occur in the rows, and what its effects multiply there.</summary>
internal sealed class RandomLevels
{
    private RandomLevels(RandomTerm term, string[] names, int[] level, double[][] multipliers) =>
        (Term, Names, Level, Multipliers) = (term, names, level, multipliers);

    public RandomTerm Term { get; }

    /// <summary>The names of the levels, sorted factor by factor.</summary>
    public string[] Names { get; }

    public int Count => Names.Length;

    /// <summary>The level of each row.</summary>
    public int[] Level { get; }

    /// <summary>For each effect, what it multiplies in each row; empty where the term is an intercept alone.</summary>
    public double[][] Multipliers { get; }

    public bool IsPlain => Multipliers.Length == 0;

    public int EffectCount => IsPlain ? 1 : Multipliers.Length;

    public static RandomLevels Of(RandomTerm term, ModelData data, int[] rows)
    {
        var factors = term.Grouping.Select(name => data.IsFactor(name)
            ? data.Coded(name).Of(rows)
            : throw new ArgumentException($"{term} groups by '{name}', which is a column of numbers; give it as a factor.", nameof(data))).ToList();
        var (names, level) = factors[0];
        foreach (var (moreNames, more) in factors.Skip(1)) (names, level) = Combined(names, level, moreNames, more);
        if (term is { HasIntercept: true, Slopes.Count: 0 }) return new(term, names, level, []);
        var slopes = term.Slopes.Select(slope => !data.IsFactor(slope.Column)
            ? FixedColumns.Powers(data.Numbers(slope.Column), rows, slope.Power)
            : throw new ArgumentException($"{term} has a slope on the factor '{slope.Column}'; write (1 | {term.Group}:{slope.Column}) for effects by its levels.", nameof(data)));
        return new(term, names, level, [.. (term.HasIntercept ? slopes.Prepend([.. rows.Select(_ => 1.0)]) : slopes)]);
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static (string[] Names, int[] Level) Combined(string[] names, int[] level, string[] moreNames, int[] more)
    {
        var keys = new long[level.Length];
        for (var row = 0; row < keys.Length; row++) keys[row] = (long)level[row] * moreNames.Length + more[row];
        var place = new Dictionary<long, int>();
        foreach (var key in keys.ToHashSet().Order()) place[key] = place.Count;
        var combined = new int[level.Length];
        for (var row = 0; row < combined.Length; row++) combined[row] = place[keys[row]];
        return ([.. place.Keys.Select(key => $"{names[key / moreNames.Length]}:{moreNames[key % moreNames.Length]}")], combined);
    }
}
