using System.Diagnostics;
using System.Globalization;
using Tamis.Composition;
using Tamis.Formulas;
using Tamis.Labels;
using Tamis.Losses;

namespace Tamis.Benchmarks;

/// <summary>Panels of 100,000 formulas beside the bare sums of their contents, and 100,000 draws of one label, by turns in one process on one thread.</summary>
/// <remarks>The sums are those of <see cref="MixtureSums"/> over every nutrient of the shipped table, known and covered: what a panel cannot do without.
/// A tenth of the panels is compared with the panels drawn up one by one before anything is printed.</remarks>
internal static class LabelSpeed
{
    private const int Foods = 8_000, Formulas = 100_000, LinesEach = 12, Block = 1_024, Rounds = 5, WorkedOut = 1_000, Slow = 2_000;

    public static void Print(TextWriter output)
    {
        var table = CompositionTable.Load(KitFolder.Data("composition"));
        var formulas = Make(table.Nutrients);
        var contents = ContentMatrix.Of([.. formulas.Ingredients.Select(ingredient => ingredient.Profile!)]);
        output.WriteLine(Text($"{Formulas} formulas x {LinesEach} lines of {Foods} foods, {table.Nutrients.All.Count} nutrients; one thread"));
        foreach (var name in RuleSets.NamesIn(KitFolder.Data("rules")))
        {
            var rules = RuleSets.Load(KitFolder.Data("rules"), name);
            var basis = rules.IsPerServing ? PanelBasis.Serving(40) : PanelBasis.Per100Grams;
            var (prepared, prepare) = Timed(() => new ManyPanels(rules, formulas, basis));
            Agree(prepared);
            var (stride, row) = (prepared.Figures.Count, new double[prepared.Figures.Count]);
            var figures = ContentMatrix.FromRows(Foods, stride, food =>
            {
                contents.Row(food)[..stride].CopyTo(row);
                return row;
            });
            List<double> sums = [], same = [], panels = [];
            var exact = 0;
            // What takes seconds is run once more and no oftener.
            for (var round = 0; round <= Rounds && (round < 2 || panels[^1] < Slow); round++)
            {
                sums.Add(Timed(() => Sums(contents, formulas)).Milliseconds);
                same.Add(Timed(() => Sums(figures, formulas)).Milliseconds);
                (exact, var milliseconds) = Timed(() => Panels(prepared));
                panels.Add(milliseconds);
            }
            var (built, one) = Timed(() => Enumerable.Range(0, WorkedOut).Sum(formula => prepared.Panel(formula).Lines.Sum(line => line.Explain().Walk().Count())));
            output.WriteLine(Text($"{name}: {Median(panels):0} ms beside {Median(sums):0} ms of sums, {Median(panels) / Median(sums):0.0} times; {Median(panels) / Median(same):0.0} times the {Median(same):0} ms of summing as many columns as it prints (first call {panels[0]:0} ms, prepared in {prepare:0} ms); {exact} drawn up by themselves; all workings fully built {one * Formulas / WorkedOut / 1000:0.0} s for {Formulas} ({(double)built / WorkedOut:0} steps each)"));
        }
        PrintDraws(output, table);
    }

    // One label as a kitchen has it: 17 foods with the spread of their analysed samples.
    private static void PrintDraws(TextWriter output, CompositionTable table)
    {
        var random = new Random(3);
        var foods = table.Foods.Where(food => table.Nutrients.All.Count(nutrient => ContentInterval.Of(table.Content(food.Id, nutrient.Tag)) is not null) > 10).Take(17).ToArray();
        Mixture mixture = new()
        {
            Parts = [.. foods.Select((food, at) => new MixturePart(new() { Name = food.Name, Profile = table.Profile(food.Id) }, 20 + random.NextDouble() * 300, 0, new("a made-up formula", Evidence.Sheet, $"line {at + 1}")))],
            EvaporatedGrams = 100,
        };
        var rules = RuleSets.Load(KitFolder.Data("rules"), "eu") with { KnownSharePercent = 0 };
        var certainty = LabelCertainty.Of(NutritionPanel.Of(mixture, rules, PanelBasis.Per100Grams), new(2, 10, 1));
        List<double> milliseconds = [];
        for (var round = 0; round <= Rounds; round++) milliseconds.Add(Timed(() => certainty.Drawn(100_000, 1, threads: 1)).Milliseconds);
        output.WriteLine(Text($"100,000 draws of one label ({certainty.Figures.Count} figures, {foods.Length} ingredients) with the share outside each tolerance: {Median(milliseconds):0} ms, first call {milliseconds[0]:0} ms; one thread"));
    }

    private static ManyFormulas Make(NutrientList nutrients)
    {
        var random = new Random(20260925);
        Source source = new("a made-up table", Evidence.Sheet);
        Ingredient[] foods = [.. Enumerable.Range(0, Foods).Select(food => new Ingredient
        {
            Name = Text($"food {food}"),
            Profile = new(Text($"food {food}"), nutrients, [.. nutrients.All.Select(_ => random.NextDouble() < 0.02 ? default : new Content(ContentState.Measured, random.NextDouble() * 30, null, source))], 6.25),
        })];
        double[] masses = [.. Enumerable.Range(0, Formulas * LinesEach).Select(_ => 1 + random.NextDouble() * 400)];
        return new(foods, [.. Enumerable.Range(0, Formulas + 1).Select(at => at * LinesEach)], [.. masses.Select(_ => random.Next(Foods))], masses,
            [.. Enumerable.Range(0, Formulas).Select(at => masses.AsSpan(at * LinesEach, LinesEach).ToArray().Sum() * 0.1)]);
    }

    private static void Agree(ManyPanels many)
    {
        var room = many.Room(1);
        for (var formula = 0; formula < Formulas; formula += 97)
        {
            many.Draw(formula, 1, room);
            var panel = many.Panel(formula);
            for (var figure = 0; figure < many.Figures.Count; figure++)
            {
                var line = panel.Lines.FirstOrDefault(line => line.Key == many.Figures[figure].Key && line.Unit == many.Figures[figure].Unit);
                var expected = line is { IsKnownWell: true } ? (line.Declared, line.Percent?.Text) : (null, null);
                if (expected != (room.Declared(figure), room.Percent(figure))) throw new InvalidOperationException($"Formula {formula}, {many.Figures[figure]}: {expected} by itself, {room.Declared(figure)} {room.Percent(figure)} among many.");
            }
        }
    }

    private static double Sums(ContentMatrix contents, ManyFormulas formulas)
    {
        var (known, covered, totals) = (new double[Block * contents.Stride], new double[Block * contents.Stride], new double[Block]);
        var sum = 0.0;
        for (var first = 0; first < Formulas; first += Block)
        {
            var count = Math.Min(Block, Formulas - first);
            MixtureSums.SumMany(contents, formulas.Starts.AsSpan(first, count + 1), formulas.Rows, formulas.MassGrams, known, covered, totals.AsSpan(0, count));
            sum += known[0] + covered[0];
        }
        return sum;
    }

    private static int Panels(ManyPanels many)
    {
        var room = many.Room(Block);
        var exact = 0;
        for (var first = 0; first < Formulas; first += Block)
        {
            var count = Math.Min(Block, Formulas - first);
            many.Draw(first, count, room);
            foreach (var isExact in room.IsExact.AsSpan(0, count)) if (isExact) exact++;
        }
        return exact;
    }

    private static (T Result, double Milliseconds) Timed<T>(Func<T> work)
    {
        var start = Stopwatch.GetTimestamp();
        var result = work();
        return (result, Stopwatch.GetElapsedTime(start).TotalMilliseconds);
    }

    private static double Median(IReadOnlyList<double> milliseconds) => milliseconds.Skip(1).Order().ElementAt((milliseconds.Count - 1) / 2);

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
