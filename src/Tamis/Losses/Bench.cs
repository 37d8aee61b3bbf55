using Tamis.Formulas;
using Tamis.Tables;

namespace Tamis.Losses;

/// <summary>Makes one formula, component by component, inner ones first.</summary>
internal sealed class Bench(Formula formula, IngredientList ingredients, List<CellProblem> problems)
{
    /// <summary>A line in grams with what it brings in.</summary>
    private sealed record Weighed(BatchLine Line, Mixture Content);

    private readonly Dictionary<string, ComponentBatch?> _made = new(Names.Comparer);
    private readonly List<CellProblem> _gaps = [];

    public Batch Make()
    {
        foreach (var component in formula.Components) MadeOf(component);
        return new(formula, [.. formula.Components.Select(component => _made[component.Name]).OfType<ComponentBatch>()], _gaps);
    }

    private ComponentBatch? MadeOf(Component component)
    {
        if (_made.TryGetValue(component.Name, out var made)) return made;
        return _made[component.Name] = MakeComponent(component);
    }

    private ComponentBatch? MakeComponent(Component component)
    {
        Weighed?[] weighed = [.. component.Lines.Select(Weigh)];
        if (weighed.Any(each => each is null)) return null;
        Weighed[] lines = [.. weighed.OfType<Weighed>().Where(each => each.Line.MassGrams > 0)];

        var pot = new Pot();
        List<Loss> losses = [];
        foreach (var step in component.Lines.Concat(component.Leaving).Select(line => line.Step).Distinct().Order())
        {
            foreach (var (line, content) in lines.Where(each => each.Line.Step == step)) pot.Add(line.Name, content);
            foreach (var leaving in component.Leaving.Where(line => line.Step == step))
                if (Leave(component, pot, leaving) is { MassGrams: > 0 } loss) losses.Add(loss);
        }
        var mixture = pot.Content;
        if (mixture.Amount("WATER").Whole is < -0.05)
            problems.Add(new(component.Leaving[0].Origin.Key, component.Leaving[^1].Row, component.WrittenIn, component.Leaving[^1].Quantity.Text,
                $"no more water leaving {component.Name} than its lines hold"));
        return new()
        {
            Name = component.Name,
            WrittenIn = component.WrittenIn,
            Lines = [.. lines.Select(each => each.Line)],
            Losses = losses,
            In = Mixture.Of(lines.Select(each => each.Content)),
            Out = mixture,
            WeighedYieldGrams = component.WeighedYield?.Quantity.Range.Middle,
            WeighedYieldOrigin = component.WeighedYield?.Origin,
        };
    }

    /// <summary>A line in grams with what it brings in; null where its mass is not known.</summary>
    private Weighed? Weigh(Line line)
    {
        var inner = formula.Find(line.Name);
        if (inner is not null && ingredients.Find(line.Name) is not null)
            return Refused(line, line.Name, $"one name for one thing: {line.Name} is a component here and an ingredient in ingredients.csv");
        if (line.Quantity.Kind == QuantityKind.Rest) return inner is null
            ? Refused(line, line.Quantity.Text, $"a quantity: rest is for what is left of a component, and {line.Name} is none")
            : RestOf(inner, line);
        if (inner is not null) return Nested(inner, line);

        var ingredient = ingredients.FindOrBare(line.Name);
        if (line.Quantity.Resolve(ingredient, out var gap) is not { } resolved)
            return gap is { IsMistake: false } ? Gap(line, gap.Reason) : Refused(line, line.Quantity.Text, gap?.Reason ?? "a quantity that can be weighed");
        var part = new MixturePart(ingredient, resolved.MassGrams, 0, line.Origin) { MassRangeGrams = resolved.RangeGrams.IsPoint ? null : resolved.RangeGrams };
        return new(LineOf(line, resolved.MassGrams, resolved.RangeGrams, resolved.Assumption, isComponent: false), new Mixture { Parts = [part] });
    }

    private Weighed? Nested(Component inner, Line line)
    {
        if (line.Quantity.Kind != QuantityKind.Mass)
            return Refused(line, line.Quantity.Text, $"a mass in grams or rest: {line.Name} is a component");
        if (MadeOf(inner) is not { } made) return null;
        var mass = line.Quantity.Range.Middle;
        if (mass > 0 && made.YieldGrams <= 0) return Gap(line, $"{inner.Name} to have a yield, of which this takes {line.Quantity.Text}");
        var content = mass > 0 ? made.Out.Scaled(mass / made.YieldGrams) : new Mixture();
        return new(LineOf(line, mass, line.Quantity.Range, "", isComponent: true), content);
    }

    private Weighed? RestOf(Component inner, Line line)
    {
        if (MadeOf(inner) is not { } made) return null;
        var rows = formula.Components.SelectMany(component => component.Lines).Where(each => Names.Same(each.Name, inner.Name)).ToList();
        if (rows.Count(each => each.Quantity.Kind == QuantityKind.Rest) > 1)
            return Refused(line, line.Quantity.Text, $"one rest of {inner.Name}, and quantities elsewhere");
        var elsewhere = rows.Where(each => each.Quantity.Kind == QuantityKind.Mass).Sum(each => each.Quantity.Range.Middle);
        var rest = made.YieldGrams - elsewhere;
        if (rest < 0) return Refused(line, line.Quantity.Text, FormattableString.Invariant($"something left of {inner.Name}: {made.YieldGrams:0} g are made and {elsewhere:0} g used elsewhere"));
        var content = rest > 0 ? made.Out.Scaled(rest / made.YieldGrams) : new Mixture();
        return new(LineOf(line, rest, Interval.At(rest), $"what is left of {inner.Name}", isComponent: true), content);
    }

    private Loss? Leave(Component component, Pot pot, Line leaving)
    {
        var isWater = Names.Same(leaving.Name, "water");
        var quantity = leaving.Quantity;
        var of = quantity.Kind == QuantityKind.ShareOf ? quantity.Of : null;
        if (of is not null && !component.Lines.Any(line => Names.Same(line.Name, of)))
        {
            var near = Names.Nearest(of, component.Lines.Select(line => line.Name));
            Refused(leaving, quantity.Text, $"a line of {component.Name}{(near.Count > 0 ? $", such as {near[0]}" : "")}");
            return null;
        }
        if (of is not null && component.Lines.Where(line => Names.Same(line.Name, of)).All(line => line.Step > leaving.Step))
        {
            Refused(leaving, quantity.Text, $"a line that is already in at step {leaving.Step}; {of} comes later");
            return null;
        }
        var there = of is null ? pot.Grams : pot.GramsOf(of);
        var grams = quantity.Kind == QuantityKind.Mass ? quantity.Range.Middle : there * quantity.Range.Middle / 100;
        if (grams > there + 1e-9)
        {
            Refused(leaving, quantity.Text, FormattableString.Invariant($"at most the {there:0.#} g that are in {component.Name} at step {leaving.Step}"));
            return null;
        }
        if (isWater) pot.Evaporate(grams, of);
        else pot.Remove(there > 0 ? grams / there : 0, of);
        return new(leaving.Name, leaving.Step, grams, isWater, of, quantity.Text, leaving.Origin);
    }

    private static BatchLine LineOf(Line line, double massGrams, Interval rangeGrams, string assumption, bool isComponent) =>
        new(line.Name, line.Step, massGrams, rangeGrams, line.Quantity, assumption, isComponent, line.Origin, line.Notes);

    private Weighed? Refused(Line line, string found, string expected)
    {
        Note(problems, new(line.Origin.Key, line.Row, ColumnOf(line), found, expected));
        return null;
    }

    private Weighed? Gap(Line line, string expected)
    {
        Note(_gaps, new(line.Origin.Key, line.Row, ColumnOf(line), line.Quantity.Text, expected));
        return null;
    }

    // A component that several trials inherit is worked out once for each; its cell is named once.
    private static void Note(List<CellProblem> list, CellProblem problem)
    {
        if (!list.Contains(problem)) list.Add(problem);
    }

    private static string ColumnOf(Line line) => line.Origin.Locator[(line.Origin.Locator.IndexOf("column ", StringComparison.Ordinal) + "column ".Length)..];
}
