using System.Globalization;
using Tamis.Formulas;
using Tamis.Losses;
using Tamis.Tables;

namespace Tamis.Physics;

/// <summary>A part of a classic ratio.</summary>
/// <param name="Name">What is weighed: butter, egg, puree.</param>
/// <param name="Parts">How many parts of it, a range where the trade leaves it open.</param>
public sealed record RatioPart(string Name, Interval Parts);

/// <summary>A ratio of the trade, by mass: <c>2 : 1 : 1 : 2</c> of water, butter, flour and egg.</summary>
/// <param name="Family">The family that it belongs to.</param>
/// <param name="Use">The use within the family.</param>
/// <param name="Name">Its name.</param>
/// <param name="Parts">Its parts, in their order.</param>
/// <param name="On">What the ratio speaks of.</param>
/// <param name="Source">Where it comes from.</param>
public sealed record ClassicRatio(string Family, string Use, string Name, IReadOnlyList<RatioPart> Parts, WindowBase On, Source Source)
{
    /// <summary>Water after baking or cooking, in per cent of what is there then; an assumption, null where none is needed.</summary>
    public Interval? FinalWaterPercent { get; init; }

    /// <summary>What heat its egg sees, in words; empty without egg.</summary>
    public string Egg { get; init; } = "";

    /// <summary>The ratios of the kit, from <c>data/windows/ratios.csv</c>.</summary>
    public static IReadOnlyList<ClassicRatio> All { get; } = ReadAll(SheetFile.Read(Path.Combine(KitFolder.Data("windows"), "ratios.csv")));

    /// <summary>The ratio of a name.</summary>
    /// <exception cref="KeyNotFoundException">There is none of this name.</exception>
    public static ClassicRatio Named(string name) => All.FirstOrDefault(ratio => NameWords.Same(ratio.Name, name))
        ?? throw new KeyNotFoundException($"No classic ratio is called '{name}'; near ones: {string.Join(", ", Names.Nearest(name, All.Select(ratio => ratio.Name)))}.");

    /// <summary>The mass of each part in a total, in grams: total times part over the sum of the parts.</summary>
    /// <param name="totalGrams">The total.</param>
    /// <param name="at">Where in its range each open part stands, 0 at its low end to 1 at its high end.</param>
    public IReadOnlyList<(string Name, double Grams)> Masses(double totalGrams, double at = 0.5)
    {
        double[] parts = [.. Parts.Select(part => part.Parts.Low + at * part.Parts.Width)];
        return [.. Parts.Select((part, i) => (part.Name, totalGrams * parts[i] / parts.Sum()))];
    }

    /// <summary>The ratio as a component, made of the usual ingredients of the trade; water leaves until the middle of <see cref="FinalWaterPercent"/> is left.</summary>
    /// <param name="ingredients">The ingredients.</param>
    /// <param name="totalGrams">All that goes in, in grams.</param>
    /// <param name="at">Where in its range each open part stands, 0 to 1.</param>
    public Examined Made(RatioIngredients ingredients, double totalGrams = 1000, double at = 0.5)
    {
        // A part that is a ratio itself is made apart, twice as much as is needed, so that there is enough of it after its bake.
        var inner = Parts.Select(part => ingredients.RatioBehind(part.Name)).OfType<(string Name, ClassicRatio Ratio)>()
            .Select(part => ComponentOf(part.Name, part.Ratio.Masses(2 * totalGrams), part.Ratio.Made(ingredients, 2 * totalGrams).Made.Losses.Sum(loss => loss.MassGrams))).ToArray();
        var raw = Batch(0).Find(Name)!;
        // (water − leaves) / (all − leaves) is what is to be left.
        var leaves = FinalWaterPercent is { } final ? (raw.Out.Amount("WATER").Known - final.Middle / 100 * raw.YieldGrams) / (1 - final.Middle / 100) : 0;
        return Examined.Of(Batch(Math.Max(0, leaves)), Name);

        Batch Batch(double leavesGrams)
        {
            List<CellProblem> problems = [];
            var made = Losses.Batch.Of(new Formula(Name, [.. inner, ComponentOf(Name, Masses(totalGrams, at), leavesGrams)]), ingredients.List, problems);
            return problems.Count == 0 ? made : throw new TableException(problems);
        }

        Component ComponentOf(string name, IReadOnlyList<(string Name, double Grams)> masses, double leavesGrams) => new()
        {
            Name = name, WrittenIn = Name,
            Lines = [.. masses.Select((part, i) => LineOf(part.Name, LineWay.In, part.Grams, i + 2))],
            Leaving = leavesGrams > 0 ? [LineOf("water", LineWay.Out, leavesGrams, 1)] : [],
        };

        Line LineOf(string name, LineWay way, double grams, int row) => new()
        {
            Name = name, Way = way, Step = 1, Quantity = WrittenQuantity.OfGrams(grams), Row = row, Origin = Source,
        };
    }

    /// <summary>The ratio beside the windows of its own family and use.</summary>
    public CheckUp CheckUp(RatioIngredients ingredients, double at = 0.5) => Physics.CheckUp.Of(Made(ingredients, at: at), Family, Use);

    private static IReadOnlyList<ClassicRatio> ReadAll(Sheet sheet)
    {
        List<CellProblem> problems = [];
        List<ClassicRatio> ratios = [];
        foreach (var row in sheet.Rows.Select(row => new RowReader(row, problems)))
        {
            string[] names = row.Required("order").Split(':', StringSplitOptions.TrimEntries);
            Interval?[] parts = [.. row.Required("parts").Split(':', StringSplitOptions.TrimEntries).Select(PartsOf)];
            var on = WindowBase.Parse(row.Required("base"));
            if (names.Length != parts.Length || parts.Any(part => part is null)) row.Note("parts", $"a number above zero (or a range such as 0.8-1) for each of {string.Join(", ", names)}");
            else if (on is null) row.Note("base", $"one of: {string.Join(", ", WindowBase.Choices)}");
            else ratios.Add(new(row.Required("family"), row.Required("use"), row.Required("ratio"), [.. names.Zip(parts, (name, part) => new RatioPart(name, part!.Value))], on, PhysicsData.SourceOf(row.Row, problems))
            {
                FinalWaterPercent = row.Range("water_low", "water_high", 0, 100), Egg = row.Row["egg"],
            });
        }
        return problems is [] ? ratios : throw new TableException(problems);
    }

    private static Interval? PartsOf(string text)
    {
        double[] ends = [.. text.Split('-').Select(end => double.TryParse(end, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) ? value : double.NaN)];
        return ends.Length is 1 or 2 && ends.All(end => end > 0) ? Interval.Between(ends.Min(), ends.Max()) : null;
    }
}
