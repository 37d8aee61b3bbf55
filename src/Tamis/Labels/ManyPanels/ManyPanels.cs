using Tamis.Composition;
using Tamis.Losses;

namespace Tamis.Labels;

/// <summary>Nutrition panels of many formulas by one rule set: the same texts as <see cref="NutritionPanel"/>, thousands at a time, and the working of any of them when it is asked for.</summary>
/// <remarks>What each ingredient gives to each figure is worked out once; a formula is then a sum over its lines, and a figure finds its text among those printed before.
/// A figure that this cannot settle (near a tie, or a band that hangs on a condition) makes the formula's panel by itself. Lines that are shown only where asked for are left out.</remarks>
public sealed class ManyPanels
{
    private readonly RuleSet _rules;
    private readonly DateOnly? _asOf;
    private readonly ManyFormulas _formulas;
    private readonly PanelBasis _basis;
    private readonly ContentMatrix _matrix;
    private readonly (int Figure, double Per100Grams)[][] _partial;
    private readonly FigurePlan[] _plans;

    /// <summary>Prepares the panels of formulas.</summary>
    /// <param name="rules">The rule set.</param>
    /// <param name="formulas">The formulas.</param>
    /// <param name="basis">How much of each they speak of.</param>
    /// <param name="asOf">The day for which they are drawn up; null for the rules without an end.</param>
    public ManyPanels(RuleSet rules, ManyFormulas formulas, PanelBasis basis, DateOnly? asOf = null)
    {
        (_formulas, _basis, _asOf) = (formulas, basis, asOf);
        _rules = rules.AsOf(asOf);
        Figures = [.. _rules.Declaration.Where(figure => figure.Shown != LineShown.IfAsked)];
        var row = new double[Figures.Count];
        _partial = new (int, double)[formulas.Ingredients.Count][];
        _matrix = ContentMatrix.FromRows(formulas.Ingredients.Count, Figures.Count, ingredient =>
        {
            List<(int, double)> partial = [];
            for (var figure = 0; figure < row.Length; figure++)
            {
                var (per100Grams, isKnown) = FigureSum.Per100Grams(Figures[figure], formulas.Ingredients[ingredient].Profile, _rules.ProteinFactor);
                row[figure] = isKnown ? per100Grams : double.NaN;
                if (!isKnown && per100Grams != 0) partial.Add((figure, per100Grams));
            }
            _partial[ingredient] = [.. partial];
            return row;
        });
        _plans = [.. Figures.Select(PlanOf)];
    }

    /// <summary>The figures, in lawful order.</summary>
    public IReadOnlyList<DeclaredFigure> Figures { get; }

    /// <summary>How far apart the figures of two formulas stand.</summary>
    public int Stride => _matrix.Stride;

    /// <summary>Room for a block.</summary>
    public PanelRoom Room(int formulas) => new(formulas, Stride);

    /// <summary>Draws up the panels of a block of formulas.</summary>
    /// <param name="first">The first formula.</param>
    /// <param name="count">How many, no more than the room holds.</param>
    /// <param name="room">Where they are put.</param>
    /// <exception cref="ArgumentException">The room is too small, or a formula has no finished mass.</exception>
    public void Draw(int first, int count, PanelRoom room)
    {
        MixtureSums.SumMany(_matrix, _formulas.Starts.AsSpan(first, count + 1), _formulas.Rows, _formulas.MassGrams, room.Amounts, room.CoveredGrams, room.TotalGrams.AsSpan(0, count));
        for (var formula = 0; formula < count; formula++)
        {
            var finished = room.TotalGrams[formula] - _formulas.WaterLostGrams[first + formula];
            if (!(finished > 0)) throw new ArgumentException($"Formula {first + formula} has no finished mass.", nameof(first));
            var amounts = room.Amounts.AsSpan(formula * Stride, Figures.Count);
            for (var line = _formulas.Starts[first + formula]; line < _formulas.Starts[first + formula + 1]; line++)
                foreach (var (figure, per100Grams) in _partial[_formulas.Rows[line]]) amounts[figure] += _formulas.MassGrams[line] * per100Grams / 100;
            var scale = (_basis.MassGrams ?? finished) / finished;
            foreach (ref var amount in amounts) amount *= scale;
            if (room.IsExact[formula] = !Print(formula, room)) PrintByItself(first + formula, formula, room);
        }
    }

    /// <summary>The panel of one formula by itself: every line can be asked how it was worked out.</summary>
    public NutritionPanel Panel(int formula) => NutritionPanel.Of(new()
    {
        Parts = [.. Enumerable.Range(_formulas.Starts[formula], _formulas.Starts[formula + 1] - _formulas.Starts[formula])
            .Select(line => new MixturePart(_formulas.Ingredients[_formulas.Rows[line]], _formulas.MassGrams[line], 0, new($"formula {formula + 1}", Evidence.Sheet, $"line {line - _formulas.Starts[formula] + 1}")))],
        EvaporatedGrams = _formulas.WaterLostGrams[formula],
    }, _rules, _basis, _asOf);

    private bool Print(int formula, PanelRoom room)
    {
        var first = formula * Stride;
        var (total, asked) = (room.TotalGrams[formula], _rules.KnownSharePercent / 100);
        var (least, hair) = (total * asked, total * 1e-9);
        var amounts = room.Amounts.AsSpan(first, _plans.Length);
        var covered = room.CoveredGrams.AsSpan(first, _plans.Length);
        var printedSteps = room.Steps.AsSpan(first, _plans.Length);
        var shares = room.Shares.AsSpan(first, _plans.Length);
        for (var figure = 0; figure < _plans.Length; figure++)
        {
            var (plan, amount) = (_plans[figure], amounts[figure]);
            printedSteps[figure] = null;
            if (covered[figure] < least - hair || plan.IsShownIfPresent && amount <= 0) continue;
            // A share that is a hair from the one that is asked for is decided by the panel's own sum.
            if (covered[figure] < least + hair && asked < 1) return false;
            if (plan.NeedsPanel || plan.Steps.For(amount) is not { } printed || plan.PercentIsOfDeclared && printed.Percent is null) return false;
            if (plan.PercentSteps is { } percents)
            {
                if (percents.For(amount * plan.PercentPerUnit) is not { } share) return false;
                shares[figure] = share;
            }
            printedSteps[figure] = printed;
        }
        return true;
    }

    private void PrintByItself(int formula, int place, PanelRoom room)
    {
        var panel = Panel(formula);
        for (var figure = 0; figure < Figures.Count; figure++)
        {
            var line = panel.Lines.FirstOrDefault(line => line.Figure.Key == Figures[figure].Key && line.Unit == Figures[figure].Unit);
            var at = place * Stride + figure;
            room.Steps[at] = line is { IsKnownWell: true } ? new(line.Declared, line.Rounded?.Number, line.Percent?.Text) : null;
            room.Shares[at] = null;
        }
    }

    // A sum of other lines, and a line of which only the percentage is printed, look at more than the one amount.
    private FigurePlan PlanOf(DeclaredFigure figure)
    {
        var reference = _rules.Reference(figure.Key, figure.Unit) is { Shown: not PercentShown.No } shown ? shown : null;
        var isOfDeclared = reference is { PercentFrom: PercentFrom.Declared };
        return new(
            new(_rules.Rounding, figure.Key, figure.Unit, rounded => isOfDeclared && rounded.ShownNumber is { } number ? _rules.Percent(reference!, (double)number, rounded).Text : null),
            reference is not null && !isOfDeclared ? new(_rules.Rounding, reference.PercentRounding, "%", _ => null) : null,
            reference is null ? 0 : 100 / reference.Value, isOfDeclared, figure.IsPercentOnly || figure.Parts.Count > 0, figure.Shown == LineShown.IfPresent);
    }

    private sealed record FigurePlan(BandSteps Steps, BandSteps? PercentSteps, double PercentPerUnit, bool PercentIsOfDeclared, bool NeedsPanel, bool IsShownIfPresent);
}
