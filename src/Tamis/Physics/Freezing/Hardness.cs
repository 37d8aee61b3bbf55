using Tamis.Tables;

namespace Tamis.Physics;

/// <summary>How hard a frozen mixture is to the spoon, by the share of its water that is ice.</summary>
/// <param name="Ice">The ice behind it.</param>
/// <param name="Word">What a cook calls it.</param>
/// <param name="WhatToDo">What a cook does with it.</param>
/// <param name="Source">Who says so: common practice for most of it.</param>
public sealed record Hardness(Predicted Ice, string Word, string WhatToDo, Source Source)
{
    /// <summary>The hardness of an ice share, by <c>ice-hardness.csv</c>.</summary>
    /// <exception cref="TableException">The sheet must be mended, or leaves the share out.</exception>
    public static Hardness Of(Predicted ice, PhysicsData? data = null)
    {
        List<CellProblem> problems = [];
        foreach (var row in (data ?? PhysicsData.Kit).Table("ice-hardness.csv").Rows)
        {
            var reader = new RowReader(row, problems);
            var (from, to) = (reader.RequiredNumber("from", 0, 1), reader.RequiredNumber("to", 0, 1));
            if (problems.Count == 0 && ice.Value >= from && ice.Value <= to) return new(ice, row["hardness"], row["what_to_do"], PhysicsData.SourceOf(row, problems));
        }
        throw new TableException([.. problems, new("ice-hardness.csv", 0, "to", "", "rows that reach from 0 to 1")]);
    }
}
