using Tamis.Composition;
using Tamis.Losses;

namespace Tamis.Labels;

/// <summary>Nutrition panels of many formulas by one rule set: the same texts as <see cref="NutritionPanel"/>, thousands at a time, and the working of any of them when it is asked for.</summary>
/// <remarks>What each ingredient gives to each figure is worked out once; a formula is then a sum over its lines, and a figure finds its text among those printed before.
/// A condition that a band hangs on is held against the same sums, and only where an amount lies in such a band. A figure that this cannot settle (near a tie, near the limit of a condition, or with what was added of it in brackets) makes the formula's panel by itself. Lines that are shown only where asked for are left out.</remarks>
public sealed class ManyPanels
{
    private readonly RuleSet _rules;
    private readonly DateOnly? _asOf;
    private readonly ManyFormulas _formulas;
    private readonly PanelBasis _basis;
    private readonly ContentMatrix _matrix;
    private readonly (int Figure, double Per100Grams)[][] _partial;
    // The figures that the law asks for because of an ingredient; of most ingredients there are none.
    private readonly int[][] _added;
    private readonly BlockPlan _plan;

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
        _plan = new(_rules, Figures);
        _added = [.. formulas.Ingredients.Select(ingredient => Figures.Index().Where(figure => figure.Item.IsAddedBy(ingredient)).Select(figure => figure.Index).ToArray())];
        var row = new double[_plan.Columns.Length];
        _partial = new (int, double)[formulas.Ingredients.Count][];
        _matrix = ContentMatrix.FromRows(formulas.Ingredients.Count, row.Length, ingredient =>
        {
            List<(int, double)> partial = [];
            for (var figure = 0; figure < row.Length; figure++)
            {
                var (per100Grams, isKnown) = FigureSum.Per100Grams(_plan.Columns[figure].Figure, formulas.Ingredients[ingredient].Profile, _rules.ProteinFactor);
                row[figure] = isKnown ? per100Grams : double.NaN;
                if (!isKnown && per100Grams != 0) partial.Add((figure, per100Grams));
            }
            _partial[ingredient] = [.. partial];
            return row;
        });
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
        FormulaCheck check = new(_plan, room, _rules, _basis);
        for (var formula = 0; formula < count; formula++)
        {
            var finished = room.TotalGrams[formula] - _formulas.WaterLostGrams[first + formula];
            if (!(finished > 0)) throw new ArgumentException($"Formula {first + formula} has no finished mass.", nameof(first));
            var amounts = room.Amounts.AsSpan(formula * Stride, _plan.Columns.Length);
            for (var line = _formulas.Starts[first + formula]; line < _formulas.Starts[first + formula + 1]; line++)
                foreach (var (figure, per100Grams) in _partial[_formulas.Rows[line]]) amounts[figure] += _formulas.MassGrams[line] * per100Grams / 100;
            var scale = (_basis.MassGrams ?? finished) / finished;
            foreach (ref var amount in amounts) amount *= scale;
            check.Start(formula, _basis.MassGrams ?? finished);
            if (room.IsExact[formula] = !Print(first + formula, formula, room, check)) PrintByItself(first + formula, formula, room);
        }
    }

    /// <summary>The panel of one formula by itself: every line can be asked how it was worked out.</summary>
    public NutritionPanel Panel(int formula) => NutritionPanel.Of(new()
    {
        Parts = [.. Enumerable.Range(_formulas.Starts[formula], _formulas.Starts[formula + 1] - _formulas.Starts[formula])
            .Select(line => new MixturePart(_formulas.Ingredients[_formulas.Rows[line]], _formulas.MassGrams[line], 0, new($"formula {formula + 1}", Evidence.Sheet, $"line {line - _formulas.Starts[formula] + 1}")))],
        EvaporatedGrams = _formulas.WaterLostGrams[formula],
    }, _rules, _basis, _asOf);

    private bool Print(int formula, int place, PanelRoom room, FormulaCheck check)
    {
        var first = place * Stride;
        var columns = _plan.Columns.AsSpan(0, _plan.Shown);
        var (total, asked) = (room.TotalGrams[place], _rules.KnownSharePercent / 100);
        var (least, hair) = (total * asked, total * FormulaCheck.Hair);
        var amounts = room.Amounts.AsSpan(first, columns.Length);
        var covered = room.CoveredGrams.AsSpan(first, columns.Length);
        var printedSteps = room.Steps.AsSpan(first, columns.Length);
        var shares = room.Shares.AsSpan(first, columns.Length);
        for (var figure = 0; figure < columns.Length; figure++)
        {
            var (plan, amount) = (columns[figure], amounts[figure]);
            printedSteps[figure] = null;
            if (covered[figure] < least - hair || plan.IsShownIfPresent && amount <= 0) continue;
            // A share that is a hair from the one that is asked for is decided by the panel's own sum.
            if (covered[figure] < least + hair && asked < 1 || plan.NeedsPanel) return false;
            PrintedStep? printed = null;
            bool isZero;
            if (plan.Steps is { } steps)
            {
                printed = steps.For(amount) ?? check.StepOf(figure);
                if (printed is null || plan.PercentIsOfDeclared && printed.Percent is null) return false;
                isZero = printed.IsZero;
            }
            else if (check.AreDeclaredAsZero(plan.Parts) is { } areZero) isZero = areZero;
            else return false;
            if (isZero && plan.IsShownIfPresent && !IsAdded(formula, figure)) continue;
            if (plan.PercentSteps is { } percents)
            {
                if ((isZero ? plan.PercentStepsOfZero! : percents).For(amount * plan.PercentPerUnit) is not { } share) return false;
                shares[figure] = share;
                printed ??= share;
            }
            printedSteps[figure] = printed;
        }
        return true;
    }

    private bool IsAdded(int formula, int figure)
    {
        for (var line = _formulas.Starts[formula]; line < _formulas.Starts[formula + 1]; line++)
            if (_added[_formulas.Rows[line]].Contains(figure)) return true;
        return false;
    }

    private void PrintByItself(int formula, int place, PanelRoom room)
    {
        var panel = Panel(formula);
        for (var figure = 0; figure < Figures.Count; figure++)
        {
            var line = panel.Lines.FirstOrDefault(line => line.Figure.Key == Figures[figure].Key && line.Unit == Figures[figure].Unit);
            var at = place * Stride + figure;
            room.Steps[at] = line is { IsKnownWell: true } ? new(line.InBrackets.Length == 0 ? line.Declared : $"{line.Declared} {line.InBrackets}", line.Rounded?.Number, line.Percent?.Text, line.Rounded is { IsZero: true }) : null;
            room.Shares[at] = null;
        }
    }
}
