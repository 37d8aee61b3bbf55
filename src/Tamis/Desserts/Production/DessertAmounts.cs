using Tamis.Formulas;
using Tamis.Losses;
using Tamis.Production;

namespace Tamis.Desserts;

/// <summary>A component that is left over, with what somebody has to know before using it.</summary>
/// <param name="Amount">The component and how much.</param>
/// <param name="Contains">Allergens that are in.</param>
/// <param name="NotLookedAt">Ingredients whose allergens nobody wrote down.</param>
/// <param name="HoldHours">How long it keeps; null where nobody said.</param>
/// <param name="HoldCelsius">How cold; null where nobody said.</param>
/// <param name="TakenBy">Where it can go: dessert (null for this one), component, and what a formula of that takes in grams.</param>
public sealed record LeftOver(ComponentAmount Amount, IReadOnlyList<string> Contains, IReadOnlyList<string> NotLookedAt, double? HoldHours, double? HoldCelsius, IReadOnlyList<(string? Dessert, string Component, double Grams)> TakenBy);

/// <summary>The amounts of a dessert: its piece, its equipment and its store joined.</summary>
/// <param name="Dessert">The dessert.</param>
/// <param name="Trial">The trial.</param>
/// <param name="MontageSheet">The montage sheet of another size; null for the usual one.</param>
/// <param name="Amounts">What to make.</param>
/// <param name="Remarks">What a reader should know: a component that no piece takes, no montage sheet.</param>
public sealed record DessertAmounts(Dessert Dessert, string Trial, string? MontageSheet, Amounts Amounts, IReadOnlyList<string> Remarks)
{
    private const double WorthKeepingGrams = 0.5;
    private const string ReserveKey = "reserve_percent";

    /// <summary>What to make for a number of pieces.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="pieces">How many, 1 or more.</param>
    /// <param name="reservePercent">What is made beyond the need of the pieces, in per cent; null for <c>reserve_percent</c> of <c>dessert.csv</c>, or none.</param>
    /// <param name="montageSheet">A montage sheet of other sizes in the dessert folder; null for the usual one.</param>
    /// <exception cref="Tables.TableException">A sheet must be mended first.</exception>
    public static DessertAmounts Of(Dessert dessert, string trial, int pieces, double? reservePercent = null, string? montageSheet = null)
    {
        var (request, remarks) = RequestOf(dessert, trial, montageSheet);
        return new(dessert, trial, montageSheet, Amounts.Of(request with
        {
            Pieces = pieces, ReserveShare = (reservePercent ?? dessert.Facts.Number(ReserveKey, trial) ?? 0) / 100, LeastMakesOf = RoundsOf(dessert, trial, montageSheet, pieces),
        }), remarks);
    }

    /// <summary>How many pieces can be made of what there is of a component, all others made as they are needed.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="component">The component.</param>
    /// <param name="grams">How much of it there is.</param>
    /// <param name="montageSheet">A montage sheet of other sizes in the dessert folder; null for the usual one.</param>
    public static DessertAmounts From(Dessert dessert, string trial, string component, double grams, string? montageSheet = null)
    {
        var (request, remarks) = RequestOf(dessert, trial, montageSheet);
        return new(dessert, trial, montageSheet, Amounts.Of(request with { Have = new Dictionary<string, double> { [component] = grams } }), remarks);
    }

    /// <summary>What is left over, the most first.</summary>
    public IReadOnlyList<LeftOver> LeftOvers => field ??=
    [
        .. from amount in Amounts.Components
           where amount.LeftGrams >= WorthKeepingGrams
           orderby amount.LeftGrams descending
           let held = AllergensHeld.By(amount.Formula.Out.Parts.Select(part => part.Ingredient))
           let note = Dessert.Components.Of(amount.Name, Dessert.LineOf(Trial))
           select new LeftOver(amount,
               held.Contains, [.. held.NotLookedAt.Order(StringComparer.Ordinal)],
               note?.HoldHours, note?.HoldCelsius, [.. TakersOf(Dessert.Trial(Trial), amount.Name).Select(taker => ((string?)null, taker.Component, taker.Grams)), .. OtherDesserts().SelectMany(other =>
                   TakersOf(other.Trial(other.Candidate), amount.Name).Select(taker => ((string?)other.Name, taker.Component, taker.Grams)))]),
    ];

    /// <summary>What is cut or brushed off and, by the note of its row, goes somewhere.</summary>
    public IReadOnlyList<(string Component, Loss Loss, double Grams, string Note)> Trim =>
        [.. from amount in Amounts.Components
            from left in amount.Leaves
            let note = Dessert.Trial(Trial).Formula.Find(amount.Name)?.Leaving.FirstOrDefault(line => line.Origin == left.Loss.Origin)?.Notes ?? ""
            where left.Grams >= WorthKeepingGrams && !left.Loss.IsWater && note.Length > 0
            select (amount.Name, left.Loss, left.Grams, note)];

    private static (AmountsRequest Request, IReadOnlyList<string> Remarks) RequestOf(Dessert dessert, string trial, string? montageSheet)
    {
        var batch = dessert.Trial(trial);
        if (batch.Gaps.Count > 0) throw new Tables.TableException(batch.Gaps);
        var piece = dessert.PieceOf(trial, montageSheet);
        var formulaPieces = dessert.Facts.Number("pieces", trial);
        if (piece is null && formulaPieces is null)
            throw new Tables.TableException([new("montage.csv", 0, "", "", "a montage sheet, or 'pieces' in dessert.csv: nobody says how much of each component stands in a piece")]);
        List<string> remarks = [];
        if (piece is null) remarks.Add("There is no montage.csv: a piece takes its share of all that the formula makes");
        else remarks.AddRange(batch.Placed.Where(component => piece.GramsOf(component.Name) == 0).Select(component => $"{component.Name} is in the formula, but no row of {montageSheet ?? "montage.csv"} takes it: none is made"));
        return (new()
        {
            Batch = batch,
            PieceGrams = component => piece is not null ? piece.GramsOf(component)
                : batch.Placed.Any(placed => Names.Same(placed.Name, component)) ? batch.Find(component)!.YieldGrams / formulaPieces : 0,
            LimitsOf = component => LimitsOf(dessert, trial, component),
            Scales = dessert.Equipment.Scales,
        }, remarks);
    }

    // Fewer moulds than pieces: what is mixed for the mould is mixed once a round.
    private static Func<string, (int, string)?> RoundsOf(Dessert dessert, string trial, string? montageSheet, int pieces)
    {
        if (dessert.Method is not { } method) return _ => null;
        var (batch, line) = (dessert.Trial(trial), dessert.LineOf(trial).ToArray());
        StepOrder order = new(batch, [.. batch.Components.Select(component => component.Name).Append(Formulas.MethodStep.Assembly).SelectMany(component => method.StepsOf(component, line))]);
        Places places = new(dessert, trial, montageSheet, pieces);
        var rounds = MouldRounds.Of(order, MouldRounds.UsesOf(order, places, batch.Components.Select(component => component.Name)), places, dessert.Equipment);
        return component => rounds.Where(each => each.MakesOf(batch.Find(component)!) > 1).Select(each => ((int, string)?)(each.Rounds, each.Why)).FirstOrDefault();
    }

    /// <summary>What the equipment of a component's steps needs and holds, in grams.</summary>
    internal static IReadOnlyList<MakeLimit> LimitsOf(Dessert dessert, string trial, string component) =>
        [.. from step in dessert.Method?.StepsOf(component, dessert.LineOf(trial)) ?? []
            where step.Equipment is not null
            let equipment = dessert.Equipment.Find(step.Equipment!)
            where equipment is not null && Names.Same(equipment.Unit, "g")
            select new MakeLimit(equipment.Name, step.Step, equipment.Smallest, equipment.Capacity, equipment.Origin)];

    private static IEnumerable<(string Component, double Grams)> TakersOf(Batch batch, string component) =>
        batch.Components.Where(each => each.LineGrams(component) > 0).Select(each => (each.Name, each.LineGrams(component)));

    // A dessert whose sheets must be mended says so on its own pages; nothing goes into it until then.
    private IEnumerable<Dessert> OtherDesserts() => Dessert.StoreFolder is null || Path.GetDirectoryName(Dessert.Folder) is not { } around ? []
        : from folder in Directory.EnumerateDirectories(around).Order(StringComparer.Ordinal)
          where folder != Dessert.Folder && File.Exists(Path.Combine(folder, "formula.csv"))
          let other = Dessert.Open(folder)
          where other.StoreFolder == Dessert.StoreFolder && other.Problems.Count == 0
          select other;
}
