using System.Globalization;
using Tamis.Composition;
using Tamis.Formulas;
using Tamis.Losses;

namespace Tamis.Labels;

/// <summary>The nutrition declaration of a mixture by one rule set.</summary>
/// <remarks>A mandatory figure that is not known well enough makes it a draft that says so; a partial sum is never declared as if it were whole.</remarks>
public sealed class NutritionPanel
{
    private ConditionCheck? _conditions;

    private NutritionPanel(Mixture mixture, RuleSet rules, PanelBasis basis, DateOnly? asOf) => (Mixture, Rules, Basis, AsOf) = (mixture, rules, basis, asOf);

    /// <summary>What it speaks of.</summary>
    public Mixture Mixture { get; }

    /// <summary>The rules, those in force on the day.</summary>
    public RuleSet Rules { get; }

    /// <summary>How much of the mixture it speaks of.</summary>
    public PanelBasis Basis { get; }

    /// <summary>The day for which it was drawn up; null for the rules without an end.</summary>
    public DateOnly? AsOf { get; }

    /// <summary>The lines in lawful order.</summary>
    public IReadOnlyList<PanelLine> Lines { get; private set; } = [];

    /// <summary>Mandatory figures that are not known well enough.</summary>
    public IReadOnlyList<MissingFigure> Missing { get; private set; } = [];

    /// <summary>Lines that the law does not ask for, left off because they are not known well enough.</summary>
    public IReadOnlyList<LeftOffLine> LeftOff { get; private set; } = [];

    /// <summary>Whether it may not yet go on a pack.</summary>
    public bool IsDraft => DraftReasons.Count > 0;

    /// <summary>Why it may not yet go on a pack, a sentence each; none where it may.</summary>
    public IReadOnlyList<string> DraftReasons => DraftReasonsWhere(_ => true);

    /// <summary>The same where only some figures are printed, told by their keys.</summary>
    internal IReadOnlyList<string> DraftReasonsWhere(Func<string, bool> isPrinted) =>
        [.. NotInForce(), .. Missing.Where(figure => isPrinted(figure.Line.Key)).Select(figure => figure.ToString()), .. Lines.Where(line => isPrinted(line.Key)).Select(line => UnstatedOf(line.Figure)).OfType<string>(), .. Rules.Declaration.Select(UnstatedLineOf).OfType<string>()];

    /// <summary>What a reader should know beside the figures: the basis the law asks for, and what was taken as none or as published.</summary>
    public IReadOnlyList<string> Remarks => [.. OtherBasis(), .. PanelAssumptions.Of(this)];

    /// <summary>The status in a sentence.</summary>
    public string Status => (Missing.Count, NotInForce().Any()) switch
    {
        (0, false) => $"{Rules.DeclarationTitle} {Basis.Words} ({Rules.Title}).",
        (0, true) => "Draft: the rules are not in force on the day asked for.",
        (1, _) => "Draft: 1 mandatory figure is not known well enough.",
        (var count, _) => $"Draft: {count} mandatory figures are not known well enough.",
    };

    /// <summary>The status, and the lines under it.</summary>
    public override string ToString() => string.Join('\n', [Status, .. Lines.Select(line => line.ToString())]);

    /// <summary>The energy as one text, its units joined as the law joins them: <c>1557 kJ / 371 kcal</c>.</summary>
    /// <param name="key">The figure, which may have a line in each of several units.</param>
    public string Declared(string key) => string.Join(" / ", Lines.Where(line => Names.Same(line.Key, key)).Select(line => line.Printed));

    /// <summary>A line by its key, in a unit where one is given.</summary>
    /// <exception cref="KeyNotFoundException">The panel has no such line.</exception>
    public PanelLine Line(string key, string? unit = null) =>
        Lines.FirstOrDefault(line => Names.Same(line.Key, key) && (unit is null || line.Unit == unit))
        ?? throw new KeyNotFoundException($"The nutrition panel has no line '{key}'; it has: {string.Join(", ", Lines.Select(line => line.Key).Distinct())}.");

    /// <summary>Draws up a nutrition panel.</summary>
    /// <param name="mixture">What it speaks of; its finished mass must be above 0 g.</param>
    /// <param name="rules">The rule set.</param>
    /// <param name="basis">How much of the mixture it speaks of.</param>
    /// <param name="asOf">The day for which it is drawn up; without one, by the rules that have no end.</param>
    /// <param name="asked">Voluntary lines that are wished for, by their keys.</param>
    /// <exception cref="ArgumentException">The mixture has no finished mass.</exception>
    /// <exception cref="KeyNotFoundException">A line is wished for that the rule set does not have.</exception>
    public static NutritionPanel Of(Mixture mixture, RuleSet rules, PanelBasis basis, DateOnly? asOf = null, IReadOnlyCollection<string>? asked = null)
    {
        if (!(mixture.FinishedGrams > 0)) throw new ArgumentException("A nutrition panel needs a finished mass above 0 g: give the formula masses, or take back a loss that is larger than they are.", nameof(mixture));
        NutritionPanel panel = new(mixture, rules.AsOf(asOf), basis, asOf);
        HashSet<string> wished = new((asked ?? []).Select(key => panel.Rules.Figure(key).Key), Names.Comparer);
        // A law may want a line only beside others, and those beside others again.
        Queue<string> bringing = new(wished);
        while (bringing.TryDequeue(out var key))
            foreach (var other in panel.Rules.Figure(key).StandsWith.Where(wished.Add)) bringing.Enqueue(other);
        panel._conditions = new(panel, [.. panel.Rules.Declaration.Where(figure => figure.Shown != LineShown.IfAsked || wished.Contains(figure.Key)).Select(figure => figure.Key)]);
        // Where one stands, the others are no longer voluntary.
        HashSet<string> bound = new(panel.Rules.Declaration.Where(figure => figure.StandsWith.Count > 0 && wished.Contains(figure.Key) && panel.LineOf(figure).IsKnownWell).SelectMany(figure => figure.StandsWith), Names.Comparer);
        List<PanelLine> lines = [];
        List<LeftOffLine> leftOff = [];
        foreach (var figure in panel.Rules.Declaration)
        {
            var isWished = wished.Contains(figure.Key);
            if (figure.Shown == LineShown.IfAsked && !isWished) continue;
            var line = panel.LineOf(figure);
            if (!line.IsKnownWell && !figure.IsMandatory && !bound.Contains(figure.Key)) leftOff.Add(new(figure.Key, figure.Term, line.Amount, panel.UnknownOf(figure)));
            else if (figure.Shown != LineShown.IfPresent || isWished || panel.IsPresent(line)) lines.Add(line);
        }
        (panel.Lines, panel.LeftOff) = (lines, leftOff);
        panel.Missing = [.. lines.Where(line => !line.IsKnownWell).Select(line => new MissingFigure(line, panel.UnknownOf(line.Figure)))];
        return panel;
    }

    /// <summary>The mass that the panel speaks of, in grams.</summary>
    public double BasisGrams => Basis.MassGrams ?? Mixture.FinishedGrams;

    /// <summary>The conditions that bands of this panel hang on, each with whether it is met.</summary>
    public IReadOnlyDictionary<string, bool> Conditions => _conditions!.Asked;

    /// <summary>A figure in the whole of the mixture, in its unit; null where it is not known well enough.</summary>
    internal double? InWhole(DeclaredFigure figure) => FigureSum.Of(Mixture, figure, Rules.ProteinFactor) is var amount && IsKnownWell(amount) ? amount.Known : null;

    // Sums of the same masses in another order differ in the last digits: a share that is all by a hair is all.
    private bool IsKnownWell(Amount amount) => amount.IsWhole || amount.CoveredShare * 100 >= Rules.KnownSharePercent;

    private PanelLine LineOf(DeclaredFigure figure)
    {
        var amount = FigureSum.Of(Mixture, figure, Rules.ProteinFactor) * (BasisGrams / Mixture.FinishedGrams);
        var isKnownWell = IsKnownWell(amount);
        var reference = Rules.Reference(figure.Key, figure.Unit);
        var rounded = isKnownWell && !figure.IsPercentOnly ? Rules.Rounding.Round(figure.Key, figure.Unit, RoundingTable.ToDecimal(amount.Known), _conditions!.IsMet) : null;
        var percent = isKnownWell && reference is { Shown: not PercentShown.No } ? Rules.Percent(reference, Math.Max(0, amount.Known), rounded ?? Sum(figure)) : null;
        if (figure.IsPercentOnly) rounded = percent;
        return new(this, figure)
        {
            Amount = amount,
            IsKnownWell = isKnownWell,
            Declared = rounded?.Text ?? AtLeast(figure, amount),
            InBrackets = isKnownWell ? InBrackets(figure) : "",
            Rounded = rounded,
            Reference = reference,
            Percent = percent,
        };
    }

    // A trace that a table estimates is no line that somebody wished for; what was added may be one that the law asks for.
    private bool IsPresent(PanelLine line) =>
        line.Amount.Known > 0 && (line.Rounded is not { IsZero: true } || Mixture.Parts.Any(part => line.Figure.IsAddedBy(part.Ingredient)));

    // What was added is rounded as the whole is.
    private string InBrackets(DeclaredFigure figure)
    {
        if (figure.Added is not { } added) return "";
        var amount = FigureSum.Of(Mixture, figure with { Summands = [new(figure.Key, added.Formula, 1, figure.Origin)] }, Rules.ProteinFactor).Known * (BasisGrams / Mixture.FinishedGrams);
        return amount > 0 && Rules.Rounding.Round(figure.Key, figure.Unit, RoundingTable.ToDecimal(amount), _conditions!.IsMet).ShownNumber is { } shown
            ? added.Words.Replace("#", shown.ToString("0.####", CultureInfo.InvariantCulture), StringComparison.Ordinal) : "";
    }

    private string? UnstatedOf(DeclaredFigure figure) => figure.Added is not { } added ? null
        : Unstated(figure, added.NamedBy, added.IsNamedBy, profile => profile is not null && added.Formula.WayFor(profile) is { } way && FigureSum.Of(way, profile, null) > 0);

    // The law asks for a line of what was added, whether or not a table knows of it.
    private string? UnstatedLineOf(DeclaredFigure figure) =>
        Unstated(figure, figure.NamedWhereAdded, figure.IsAddedBy, profile => FigureSum.Per100Grams(figure, profile, Rules.ProteinFactor).Per100Grams > 0);

    // Of an ingredient that says it was added some must be known: no figure, or none of it, is not what its list says.
    private string? Unstated(DeclaredFigure figure, IReadOnlyList<string> words, Func<Ingredient, bool> isNamedIn, Func<NutrientProfile?, bool> isKnownIn)
    {
        Ingredient[] silent = [.. Mixture.Parts.Select(part => part.Ingredient).DistinctBy(each => each.Name, Names.Comparer).Where(each => isNamedIn(each) && !isKnownIn(each.Profile))];
        if (silent is []) return null;
        var word = words.First(word => AddedContent.IsNamed(silent[0], [word]));
        return $"{figure.Key}: {word} is named in {PanelWords.List([.. silent.Select(each => each.Name)])}, and how much was added is not known; state it in specifications.csv, or take a food that has it.";
    }

    // A sum of which every part is declared as zero is declared as zero.
    private RoundedAmount? Sum(DeclaredFigure figure)
    {
        RoundedAmount[] parts = [.. figure.Parts.Select(key => LineOf(Rules.Figure(key)).Rounded).OfType<RoundedAmount>()];
        return parts.Length == figure.Parts.Count && parts.Length > 0 && Array.TrueForAll(parts, part => part.IsZero) ? parts[0] : null;
    }

    private string AtLeast(DeclaredFigure figure, Amount amount) =>
        !figure.IsPercentOnly && Rules.Rounding.RoundDown(figure.Key, figure.Unit, RoundingTable.ToDecimal(amount.Known)) is { } least ? $"at least {least}" : "not known";

    private IReadOnlyList<UnknownShare> UnknownOf(DeclaredFigure figure) =>
        [.. Mixture.Parts
            .Where(part => !FigureSum.Per100Grams(figure, part.Ingredient.Profile, Rules.ProteinFactor).IsKnown)
            .GroupBy(part => part.Ingredient.Name, Names.Comparer)
            .Select(parts => new UnknownShare(parts.Key, parts.Sum(part => part.MassGrams) / Mixture.WeighedInGrams * 100))
            .OrderByDescending(unknown => unknown.SharePercent).ThenBy(unknown => unknown.Ingredient, StringComparer.Ordinal)];

    private IEnumerable<string> NotInForce()
    {
        if (Rules.InForce.On(AsOf)) yield break;
        var from = Rules.InForce.From is { } first ? $" from {Written(first)}" : "";
        var to = Rules.InForce.To is { } last ? $" to {Written(last)}" : "";
        yield return $"{Rules.Act} is in force{from}{to}, {(AsOf is { } day ? $"not on {Written(day)}" : "no longer")}.";
    }

    private IEnumerable<string> OtherBasis()
    {
        var isAskedFor = Rules.Columns.Any(IsOf);
        var others = string.Join(" and ", Rules.Columns.Where(column => !IsOf(column)).Select(column => column == PanelColumn.Serving ? "per serving" : "per 100\u202fg"));
        if (!isAskedFor) yield return $"The law asks for figures {others}; these are {Basis.Words}{(Rules.Columns is [PanelColumn.Per100] ? " and may stand beside them" : "")}.";
        else if (others.Length > 0) yield return $"The law asks for figures {others} beside those {Basis.Words}.";
    }

    /// <summary>Whether the panel speaks of what a column that a law asks for speaks of.</summary>
    public bool IsOf(PanelColumn column) => column == PanelColumn.Serving ? Basis.IsServing : Basis is { MassGrams: 100, IsPackage: false, IsUnit: false, IsOtherAmount: false } || Basis.IsVolume;

    private static string Written(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
