using Tamis.Formulas;
using Tamis.Tables;

namespace Tamis.Trials;

/// <summary>A formula that was made, as the log has it.</summary>
public sealed record Trial
{
    /// <summary>Its short name, the head of its column in the formula sheet.</summary>
    public required string Name { get; init; }

    /// <summary>The trial that it was changed from; null for a first one.</summary>
    public string? Parent { get; init; }

    /// <summary>The days on which it was made; several days are several makes, none is a trial that is only planned.</summary>
    public IReadOnlyList<DateOnly> MadeOn { get; init; } = [];

    /// <summary>The question behind the change.</summary>
    public string Question { get; init; } = "";

    /// <summary>What came of it.</summary>
    public string Outcome { get; init; } = "";

    /// <summary>The kitchen's own remark.</summary>
    public string Notes { get; init; } = "";

    /// <summary>Where it stands.</summary>
    public required Source Origin { get; init; }
}

/// <summary>The log of all trials of a dessert.</summary>
public sealed class TrialLog
{
    private TrialLog(IReadOnlyList<Trial> trials)
    {
        Trials = trials;
        Lineage = new([.. trials.Select(trial => new TrialParent(trial.Name, trial.Parent))]);
    }

    /// <summary>The trials in the order of the sheet.</summary>
    public IReadOnlyList<Trial> Trials { get; }

    /// <summary>Which trial came from which.</summary>
    public TrialLineage Lineage { get; }

    /// <summary>The trial of a name, or null.</summary>
    public Trial? Find(string name) => Trials.FirstOrDefault(trial => Names.Same(trial.Name, name));

    /// <summary>The trials that were changed from this one.</summary>
    public IEnumerable<Trial> ChildrenOf(string name) => Trials.Where(trial => Names.Same(trial.Parent, name));

    /// <summary>Reads <c>trials.csv</c>.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="problems">Receives every cell that must be mended; with any of this sheet the result is null.</param>
    public static TrialLog? Read(Sheet sheet, List<CellProblem> problems)
    {
        List<CellProblem> own = [];
        List<(Trial Trial, SheetRow Row)> read = [];
        foreach (var row in sheet.Rows)
        {
            var reader = new RowReader(row, own);
            if (reader.Required("trial") is not { Length: > 0 } name) continue;
            if (read.Any(each => Names.Same(each.Trial.Name, name)))
            {
                own.Add(row.Problem("trial", "a name that no other trial has"));
                continue;
            }
            read.Add((new()
            {
                Name = name, Parent = reader.Text("parent"), MadeOn = reader.Dates("made_on"), Question = row["question"],
                Outcome = row["outcome"], Notes = row["notes"], Origin = row.Origin("trial"),
            }, row));
        }
        if (read.Count == 0 && own.Count == 0) own.Add(new(sheet.File, 0, "", "", "at least one row that names a trial"));
        TrialParent[] parents = [.. read.Select(each => new TrialParent(each.Trial.Name, each.Trial.Parent))];
        foreach (var (trial, row) in read)
            if (TrialLineage.FaultOf(new(trial.Name, trial.Parent), parents) is { } expected) own.Add(row.Problem("parent", expected));
        problems.AddRange(own);
        return own.Count == 0 ? new([.. read.Select(each => each.Trial)]) : null;
    }
}
