using Tamis.Tables;

namespace Tamis.Composition;

/// <summary>Reads <c>compound-foods.csv</c>: for each food of a table, whether it is a single food or a compound.</summary>
internal static class CompoundFoods
{
    public const string File = "compound-foods.csv";

    public static readonly string[] Columns = ["food", "compound", "source", "evidence"];

    /// <summary>The foods with what the rows say of them.</summary>
    public static IReadOnlyList<Food> Over(IReadOnlyList<Food> foods, IEnumerable<RowReader> rows)
    {
        var known = foods.ToDictionary(food => food.Id, Names.Comparer);
        Dictionary<string, CompoundStatement> stated = new(Names.Comparer);
        foreach (var row in rows)
        {
            var id = row.Required("food");
            if (!known.ContainsKey(id)) row.Named("food", known);
            Source source = new(row.Required("source") is { Length: > 0 } key ? key : "unknown source", row.Choice("evidence", CompositionFiles.EvidenceWords) ?? Evidence.Memory, row.Row["locator"]);
            if (!stated.TryAdd(id, Statement(row, row.Row["kind"], source))) row.Note("food", "each food once");
        }
        return [.. foods.Select(food => food with { Compound = stated.GetValueOrDefault(food.Id) })];
    }

    public static CompoundStatement Statement(RowReader row, string kind, Source source)
    {
        if (row.Text("compound") is null) row.Note("compound", "yes or no");
        var isCompound = row.YesOrNo("compound") ?? false;
        // Without it nobody is told what to ask the supplier for.
        return new(isCompound, kind, isCompound ? row.Required("consists_of") : "", source);
    }
}
