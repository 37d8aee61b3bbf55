using System.Globalization;

namespace Tamis.Composition;

/// <summary>Tests the rules one by one against one table.</summary>
internal sealed class AuditRun
{
    private readonly CompositionTable _table;
    private readonly AuditRules _rules;
    private readonly ContentMatrix _contents, _least, _most;
    private readonly ILookup<string, int> _groups;

    public AuditRun(CompositionTable table, AuditRules rules)
    {
        (_table, _rules, _contents) = (table, rules, table.ToMatrix());
        (_least, _most) = (table.ToMatrix(belowLimit: 0), table.ToMatrix(belowLimit: 1));
        _groups = Enumerable.Range(0, table.Foods.Count).ToLookup(row => table.Foods[row].Group, Names.Comparer);
    }

    /// <summary>Adds what does not fit a rule; how many figures it could test.</summary>
    public int Test(AuditRule rule, List<AuditFinding> findings) => rule.Kind switch
    {
        AuditKind.Outlier or AuditKind.Tens => rule.Left.Terms.Sum(term => Groups(rule, term.Tag, findings)),
        AuditKind.Samples => rule.Left.Terms.Sum(term => Samples(rule, term.Tag, findings)),
        _ => Foods(rule, findings),
    };

    private int Foods(AuditRule rule, List<AuditFinding> findings)
    {
        if (AuditColumns.For(rule.Left, _table.Nutrients) is not { } left) return 0;
        var right = rule.Right is { } sum ? AuditColumns.For(sum, _table.Nutrients) : null;
        if (right is null && rule.Kind is AuditKind.Within or AuditKind.AtLeast or AuditKind.Near) return 0;
        var against = rule.Kind == AuditKind.OwnFactors ? "the record’s own energy factors" : rule.Right is { } words ? Words(words) : "";
        var tested = 0;
        for (var row = 0; row < _table.Foods.Count; row++)
        {
            var food = _table.Foods[row];
            if (!_rules.IsFor(rule, food)) continue;
            var (least, most) = rule.Kind == AuditKind.Within ? (left.AtLeast(_least.Row(row), _most.Row(row)), double.PositiveInfinity) : left.Between(_least.Row(row), _most.Row(row));
            if (double.IsNaN(least) || Limits(rule, row, right) is not var (low, high)) continue;
            tested++;
            if (most >= low - Slack(low) && least <= high + Slack(high)) continue;
            findings.Add(Finding(rule, food, Words(rule.Left), rule.Left.Tag, left.Of(_contents.Row(row)) / left.PerUnit, left.Unit, low / left.PerUnit, high / left.PerUnit) with { Against = against });
        }
        return tested;
    }

    // Sums of decimals end in the last digits of a double: 36 is not more than 36.
    private static double Slack(double limit) => double.IsFinite(limit) ? Math.Abs(limit) * 1e-9 : 0;

    // The limits within which the left side must lie; null where what it is held against is unknown.
    private (double Low, double High)? Limits(AuditRule rule, int row, AuditColumns? right)
    {
        if (rule.Kind == AuditKind.Between) return (rule.Low, rule.High);
        var (least, most) = rule.Kind == AuditKind.OwnFactors ? OwnEnergy(row, right) : right!.Between(_least.Row(row), _most.Row(row));
        if (double.IsNaN(least) || most < rule.Least) return null;
        return (rule.Kind == AuditKind.Within ? double.NegativeInfinity : least - Margin(least), rule.Kind == AuditKind.AtLeast ? double.PositiveInfinity : most + Margin(most));

        double Margin(double expected) => Math.Max(rule.Margin, Math.Abs(expected) * rule.MarginPercent / 100);
    }

    // Merrill and Watt (1973): the factors belong to protein, fat and carbohydrate by difference; the rule adds alcohol by its own.
    private (double Least, double Most) OwnEnergy(int row, AuditColumns? besides)
    {
        if (_table.Foods[row].EnergyFactors is not { } factors) return (double.NaN, double.NaN);
        return (Of(_least.Row(row)), Of(_most.Row(row)));

        double Of(ReadOnlySpan<double> contents) => factors.ProteinKilocaloriesPerGram * Content("PROCNT", contents) + factors.FatKilocaloriesPerGram * Content("FAT", contents)
            + factors.CarbohydrateKilocaloriesPerGram * Content("CHOCDF", contents) + (besides?.Of(contents) is { } sum && !double.IsNaN(sum) ? sum : 0);
    }

    private double Content(string tag, ReadOnlySpan<double> contents) => _table.Nutrients.IndexOf(tag) is var column and >= 0 ? contents[column] : double.NaN;

    private int Groups(AuditRule rule, string tag, List<AuditFinding> findings)
    {
        var column = _table.Nutrients.IndexOf(tag);
        if (column < 0) return 0;
        var tested = 0;
        foreach (var group in _groups)
        {
            // What the kit took over from a like food says nothing of how foods differ: a copy would only make its group look narrow.
            var spread = FoodGroupSpread.Of(group.Where(row => !_table.IsFilledIn(row, column)).Select(row => _contents.Row(row)[column]));
            if (group.Key.Length == 0 || spread.Foods < rule.Least || rule.Kind == AuditKind.Tens && spread.Deviation > rule.High) continue;
            foreach (var row in group.Where(row => _contents.Row(row)[column] > 0))
            {
                tested++;
                var value = _contents.Row(row)[column];
                var limit = rule.Kind == AuditKind.Tens ? 1 : rule.High;
                var fits = rule.Kind == AuditKind.Tens ? spread.Tens(value, rule.Margin) is null : Math.Abs(spread.Distance(value, rule.Margin)) <= limit;
                if (fits) continue;
                findings.Add(Finding(rule, _table.Foods[row], _table.Nutrients.All[column].Word, tag, value, _table.Nutrients.All[column].Unit,
                    spread.At(-limit, rule.Margin), spread.At(limit, rule.Margin)) with
                {
                    Against = string.Create(CultureInfo.InvariantCulture, $"{spread.Foods} foods of {group.Key}"),
                    Origin = _table.Content(_table.Foods[row].Id, tag).Source,
                });
            }
        }
        return tested;
    }

    private int Samples(AuditRule rule, string tag, List<AuditFinding> findings)
    {
        var column = _table.Nutrients.IndexOf(tag);
        if (column < 0) return 0;
        var tested = 0;
        for (var row = 0; row < _table.Foods.Count; row++)
        {
            if (_table.Extremes(row, column) is not { } extremes || double.IsNaN(_contents.Row(row)[column])) continue;
            tested++;
            var value = _contents.Row(row)[column];
            if (value >= extremes.Low - rule.Margin - Slack(extremes.Low) && value <= extremes.High + rule.Margin + Slack(extremes.High)) continue;
            findings.Add(Finding(rule, _table.Foods[row], _table.Nutrients.All[column].Word, tag, value, _table.Nutrients.All[column].Unit, extremes.Low, extremes.High) with { Against = "its lowest and highest sample" });
        }
        return tested;
    }

    private AuditFinding Finding(AuditRule rule, Food food, string words, string tag, double value, string unit, double low, double high) => new(food, words, tag, value, unit, rule)
    {
        Low = double.IsFinite(low) ? low : null,
        High = double.IsFinite(high) ? high : null,
        Origin = tag.Length > 0 ? _table.Content(food.Id, tag).Source : null,
    };

    private string Words(AuditSum sum) => sum.InWords(_table.Nutrients);
}
