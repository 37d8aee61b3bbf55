using System.Diagnostics;
using System.Globalization;
using Tamis.Formulas;
using Tamis.Losses;
using Tamis.Production;
using Tamis.Tables;

namespace Tamis.Benchmarks;

/// <summary>A plan of 60 tasks on 10 resources, and the amounts of 50 components at once: how long each takes, the first time and later.</summary>
internal static class KitchenWork
{
    private const int Rounds = 5;

    public static void Print(TextWriter output)
    {
        var plans = Times(() => Plan(), out var said);
        output.WriteLine(Text($"plan of 60 tasks on 10 resources: first {plans[0]:0} ms, later {plans[1..].Order().ElementAt(Rounds / 2):0} ms; {said} (aim: under 10 s on two cores)"));
        var read = Stopwatch.GetTimestamp();
        var batch = Fifty();
        var reading = Stopwatch.GetElapsedTime(read).TotalMilliseconds;
        var amounts = Times(() => Text($"{Made(batch).Components.Count} components"), out var components);
        output.WriteLine(Text($"amounts of {components} for 48 pieces: first {amounts[0]:0} ms, later {amounts[1..].Order().ElementAt(Rounds / 2):0.0} ms (aim: under 100 ms); its formula read the first time in {reading:0} ms"));
    }

    // Twelve preparations of five tasks: weigh, mix, bake or chill, rest, finish; two people, two ovens, chillers and mixers.
    private static string Plan()
    {
        var random = new Random(20261125);
        WorkResource[] resources = [.. Enumerable.Range(1, 3).Select(i => new WorkResource($"P{i}") { IsPerson = true }), new("oven 1", 2), new("oven 2", 2), new("chiller", 4), new("freezer", 8), new("mixer 1"), new("mixer 2"), new("induction", 2)];
        List<WorkTask> tasks = [];
        for (var preparation = 0; preparation < 12; preparation++)
        {
            string[] on = ["P1", preparation % 2 == 0 ? "mixer 1" : "mixer 2", preparation % 3 == 0 ? "chiller" : preparation % 3 == 1 ? "oven 1" : "oven 2", "freezer", "induction"];
            for (var step = 0; step < 5; step++)
                tasks.Add(new()
                {
                    Name = Text($"p{preparation} s{step}"), Minutes = 5 + random.Next(step is 2 or 3 ? 60 : 15),
                    Uses = [new([on[step]]), .. step is 0 or 1 or 4 ? new[] { new TaskUse(["P1", "P2", "P3"]) } : []],
                    After = step == 0 ? [] : [new(Text($"p{preparation} s{step - 1}"))],
                });
        }
        var answer = Scheduler.Solve(new() { Tasks = tasks, Resources = resources, HorizonMinutes = 2_000 });
        var schedule = answer.Schedule ?? throw new InvalidOperationException("The plan of 60 tasks was not found.");
        return Text($"ends after {schedule.EndMinutes} min, {(schedule.IsProven ? "proven" : Text($"within {schedule.GapMinutes} min of the best there can be"))}");
    }

    // Fifty components, each second one taken in by the one behind it.
    private static Batch Fifty()
    {
        System.Text.StringBuilder text = new("component,line,way,step,T1\n");
        for (var i = 0; i < 50; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $"c{i},sugar {i % 7},,1,{50 + i} g\nc{i},egg,,2,{1 + i % 3} eggs\n");
            if (i % 2 == 1) text.Append(CultureInfo.InvariantCulture, $"c{i},c{i - 1},,3,40 g\n");
            text.Append(CultureInfo.InvariantCulture, $"c{i},bowl,out,4,3 %\n");
        }
        List<CellProblem> problems = [];
        var sheet = SheetFile.Parse("formula.csv", System.Text.Encoding.UTF8.GetBytes(text.ToString()));
        var formula = FormulaSheet.Read(sheet, null, problems)[0];
        var batch = Batch.Of(formula, new([new Ingredient { Name = "egg", Piece = "egg", PieceGrams = 58, EdiblePercent = 88 }]), problems);
        return problems is [] ? batch : throw new TableException(problems);
    }

    private static Amounts Made(Batch batch) =>
        Amounts.Of(new() { Batch = batch, Pieces = 48, PieceGrams = name => int.Parse(name[1..], CultureInfo.InvariantCulture) % 2 == 1 ? 20 : 0 });

    private static double[] Times(Func<string> work, out string said)
    {
        List<double> milliseconds = [];
        said = "";
        for (var round = 0; round <= Rounds; round++)
        {
            var start = Stopwatch.GetTimestamp();
            said = work();
            milliseconds.Add(Stopwatch.GetElapsedTime(start).TotalMilliseconds);
        }
        return [.. milliseconds];
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
