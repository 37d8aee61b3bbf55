using Tamis.Tables;

namespace Tamis.Formulas;

/// <summary>A trial and the one that it was changed from; a first trial has no parent.</summary>
public sealed record TrialParent(string Trial, string? Parent);

/// <summary>Which trial came from which.</summary>
public sealed class TrialLineage
{
    private readonly Dictionary<string, string?> _parents;

    /// <summary>Makes a lineage in which every parent is known and nobody is their own ancestor.</summary>
    /// <exception cref="ArgumentException">A parent is unknown or a trial descends from itself.</exception>
    public TrialLineage(IReadOnlyList<TrialParent> trials)
    {
        _parents = new(Names.Comparer);
        foreach (var trial in trials) _parents.Add(trial.Trial, trial.Parent);
        Trials = [.. trials.Select(trial => trial.Trial)];
        foreach (var trial in trials)
            if (FaultOf(trial, trials) is { } fault) throw new ArgumentException(fault, nameof(trials));
    }

    /// <summary>The trials in the order of the sheet.</summary>
    public IReadOnlyList<string> Trials { get; }

    /// <summary>The parent of a trial, null for a first one or one that is not known.</summary>
    public string? ParentOf(string trial) => _parents.GetValueOrDefault(trial);

    /// <summary>The trial, its parent, its parent's parent and so on.</summary>
    public IEnumerable<string> LineOf(string trial)
    {
        for (string? at = trial; at is not null; at = ParentOf(at)) yield return at;
    }

    /// <summary>What is wrong with a trial's parent, in words; null where nothing is.</summary>
    public static string? FaultOf(TrialParent trial, IReadOnlyList<TrialParent> all)
    {
        if (trial.Parent is null) return null;
        var parents = new Dictionary<string, string?>(Names.Comparer);
        foreach (var each in all) parents.TryAdd(each.Trial, each.Parent);
        if (!parents.ContainsKey(trial.Parent))
            return $"the name of a trial, such as {string.Join(", ", Names.Nearest(trial.Parent, all.Select(each => each.Trial)).DefaultIfEmpty(all[0].Trial))}";
        var seen = new HashSet<string>(Names.Comparer) { trial.Trial };
        for (var at = trial.Parent; at is not null; at = parents.GetValueOrDefault(at))
            if (!seen.Add(at)) return Names.Same(at, trial.Trial) ? "a parent that does not come from this trial itself" : null;
        return null;
    }
}
