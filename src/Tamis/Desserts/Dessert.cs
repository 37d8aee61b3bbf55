using System.Collections.Concurrent;
using System.Globalization;
using Tamis.Composition;
using Tamis.Costing;
using Tamis.Formulas;
using Tamis.Labels;
using Tamis.Losses;
using Tamis.Montage;
using Tamis.Physics;
using Tamis.Production;
using Tamis.Tables;
using Tamis.Tasting;
using Tamis.Trials;

namespace Tamis.Desserts;

/// <summary>The whole development of one dessert, as its folder of sheets has it.</summary>
/// <remarks>A bad sheet stops what uses it and nothing else: reading <see cref="Batches"/> throws for a bad formula, reading <see cref="Tastings"/> for bad scores.</remarks>
public sealed class Dessert
{
    private readonly DessertSheets _sheets;
    private readonly DateOnly? _asOf;
    private readonly Part<TrialLog?> _log;
    private readonly Part<Store> _store;
    private readonly Part<CompositionTable> _table;
    private readonly Part<SpecificationHistory> _specifications;
    private readonly Part<IReadOnlyList<Formula>> _formulas;
    private readonly Part<IReadOnlyList<Batch>> _batches;
    private readonly Part<Method?> _method;
    private readonly Part<DessertFacts> _facts;
    private readonly Part<ComponentNotes> _components;
    private readonly Part<IReadOnlyList<Measurement>> _measured;
    private readonly Part<TastingLog?> _tastings;
    private readonly Part<FamilyWindows> _windows;
    private readonly Part<IReadOnlyList<Mould>> _moulds;
    private readonly Part<MontageSheet?> _montage;
    private readonly Part<EquipmentList> _equipment;
    private readonly Part<RemarkWords> _remarkWords;
    private readonly Part<PriceList> _prices;
    private readonly Part<KitchenWords> _words;
    private readonly Dictionary<string, TastingReport> _reports = [];
    private readonly ConcurrentDictionary<string, TrialPhysics> _physics = new(Names.Comparer);

    private Dessert(DessertSheets sheets, CompositionTable table, StatedFigures stated, DateOnly? asOf)
    {
        (_sheets, _asOf) = (sheets, asOf);
        _table = Part<CompositionTable>.Read((_, _) => sheets.CompositionFolder is { } own ? WithFoodsOf(table, own) : table, table);
        _log = Part<TrialLog?>.Read((problems, bad) => sheets.Optional("trials.csv", bad) is { } sheet ? TrialLog.Read(sheet, problems) : null, null);
        _facts = Part<DessertFacts>.Read((problems, bad) => sheets.Optional("dessert.csv", bad) is { } sheet ? DessertFacts.Read(sheet, problems) : DessertFacts.None, DessertFacts.None);
        _store = Part<Store>.ReadBeside(_table.Problems, (problems, bad) => ReadStore(table, stated, problems, bad), Store.None);
        // What must be mended in it is said by the store, which reads the same sheet.
        _specifications = Part<SpecificationHistory>.Read((problems, bad) => sheets.Optional("specifications.csv", bad) is { } sheet ? SpecificationHistory.Read(sheet, problems) : SpecificationHistory.None, SpecificationHistory.None);
        _formulas = Part<IReadOnlyList<Formula>>.ReadBeside(_log.Problems, (problems, bad) => FormulaSheet.Read(sheets.Required("formula.csv", bad), _log.Problems.Count == 0 ? _log.Value?.Lineage : null, problems), []);
        _batches = Part<IReadOnlyList<Batch>>.Read(
            (problems, _) => [.. _formulas.Value.Select(formula => Batch.Of(formula, _store.Value.Ingredients, problems))], [], _formulas.Problems, _store.Problems);
        _method = Part<Method?>.Read((problems, bad) => sheets.Optional("steps.csv", bad) is { } sheet ? Method.Read(sheet, problems) : null, null);
        _components = Part<ComponentNotes>.Read((problems, bad) => sheets.Optional("components.csv", bad) is { } sheet ? ComponentNotes.Read(sheet, problems) : ComponentNotes.None, ComponentNotes.None);
        _measured = Part<IReadOnlyList<Measurement>>.Read((problems, bad) => sheets.Optional("measured.csv", bad) is { } sheet ? Measurement.ReadAll(sheet, problems) : [], []);
        _tastings = Part<TastingLog?>.Read(ReadTastings, null);
        _windows = Part<FamilyWindows>.Read((problems, bad) => sheets.Optional("windows.csv", bad) is { } sheet ? FamilyWindows.Kit.With(FamilyWindows.Read(sheet, FigureList.Kit, problems)) : FamilyWindows.Kit, FamilyWindows.Kit);
        _moulds = Part<IReadOnlyList<Mould>>.Read((problems, bad) => sheets.Optional("moulds.csv", bad) is { } sheet ? Mould.ReadAll(sheet, problems) : [], []);
        _equipment = Part<EquipmentList>.Read((problems, bad) => sheets.Optional("equipment.csv", bad) is { } sheet ? EquipmentList.Read(sheet, problems) : EquipmentList.None, EquipmentList.None);
        _montage = Part<MontageSheet?>.Read((problems, bad) => sheets.Optional("montage.csv", bad) is { } sheet ? MontageSheet.Read(sheet, problems) : null, null);
        _remarkWords = Part<RemarkWords>.Read((problems, bad) => sheets.Optional("remark_words.csv", bad) is { } sheet ? RemarkWords.Read(sheet, problems) : RemarkWords.Kit, RemarkWords.Kit);
        _words = Part<KitchenWords>.Read((problems, bad) => sheets.Optional("words.csv", bad) is { } sheet ? KitchenWords.Read(sheet, problems) : KitchenWords.None, KitchenWords.None);
        // Without names to hold them against, prices are found by the names that formulas use.
        _prices = Part<PriceList>.Read((problems, bad) => sheets.Optional("prices.csv", bad) is not { } sheet ? PriceList.None
            : PriceList.Read(sheet, sheets.Optional("ingredients.csv", bad) is { } ingredients ? [.. ingredients.Rows.Select(row => row["ingredient"])] : null, _facts.Problems.Count == 0 ? _facts.Value.Text("currency") : null, problems), PriceList.None);
    }

    /// <summary>Opens a dessert folder with its store: the folder <c>store</c> in it or beside it.</summary>
    /// <param name="folder">The dessert folder.</param>
    /// <param name="asOf">The day whose supplier documents count; the last make of the trials sheet by default.</param>
    /// <exception cref="TableException">The folder is not there, or holds no <c>formula.csv</c>.</exception>
    public static Dessert Open(string folder, DateOnly? asOf = null) => new(DessertSheets.Find(folder), KitData.Composition, KitData.Stated, asOf);

    /// <summary>The day whose rules its labels are drawn up by, in place of <c>rules_day</c> of <c>dessert.csv</c>; null where that row decides.</summary>
    public DateOnly? RulesDay { get; private init; }

    /// <summary>The same sheets with labels by the rules of a day, whatever <c>rules_day</c> of <c>dessert.csv</c> says; null lets that row decide.</summary>
    public Dessert ByRulesOf(DateOnly? day) => day == RulesDay ? this : new(_sheets, KitData.Composition, KitData.Stated, _asOf) { RulesDay = day };

    /// <summary>The dessert's name, from <c>dessert.csv</c> or else from its folder.</summary>
    public string Name => _facts.Problems.Count == 0 && _facts.Value.Text("name") is { } name ? name : _sheets.FolderName.Replace('-', ' ').Replace('_', ' ');

    /// <summary>The name of the dessert folder, without its path.</summary>
    public string FolderName => _sheets.FolderName;

    /// <summary>The dessert folder, as a full path.</summary>
    public string Folder => _sheets.Folder;

    /// <summary>The store, with its ingredients.</summary>
    public Store Store => _store.Value;

    /// <summary>The suppliers' documents of the store, newer against older.</summary>
    public SpecificationHistory Specifications => _specifications.Value;

    /// <summary>The folder of the store, in the dessert folder or beside it; null where there is none.</summary>
    public string? StoreFolder => _sheets.StoreFolder;

    /// <summary>The trial log; null where there is no <c>trials.csv</c>.</summary>
    public TrialLog? Log => _log.Value;

    /// <summary>Every trial's formula.</summary>
    public IReadOnlyList<Formula> Formulas => _formulas.Value;

    /// <summary>Every trial as one batch.</summary>
    public IReadOnlyList<Batch> Batches => _batches.Value;

    /// <summary>The method sheet; null where there is none.</summary>
    public Method? Method => _method.Value;

    /// <summary>The facts of <c>dessert.csv</c>.</summary>
    public DessertFacts Facts => _facts.Value;

    /// <summary>What <c>components.csv</c> says of the components.</summary>
    public ComponentNotes Components => _components.Value;

    /// <summary>What was measured.</summary>
    public IReadOnlyList<Measurement> Measured => _measured.Value;

    /// <summary>Where the figures of families usually lie: the kit's windows, with those of <c>windows.csv</c> in the store.</summary>
    public FamilyWindows Windows => _windows.Value;

    /// <summary>The tastings; null where <c>attributes.csv</c>, <c>servings.csv</c> or <c>scores.csv</c> is missing.</summary>
    public TastingLog? Tastings => _tastings.Value;

    /// <summary>The prices of the store.</summary>
    public PriceList Prices => _prices.Value;

    /// <summary>The kitchen's own words in other languages.</summary>
    public KitchenWords Words => _words.Value;

    /// <summary>The moulds of the store.</summary>
    public IReadOnlyList<Mould> Moulds => _moulds.Value;

    /// <summary>What the kitchen works with and who works there.</summary>
    public EquipmentList Equipment => _equipment.Value;

    /// <summary>How it is put together; null where there is no <c>montage.csv</c>.</summary>
    public MontageSheet? Montage => _montage.Value;

    /// <summary>The tastings as they are planned, before anybody has scored: questions, tastings, servings.</summary>
    /// <exception cref="TableException"><c>attributes.csv</c> or <c>tastings.csv</c> is missing, or a cell must be mended.</exception>
    public TastingLog PlannedTastings => Part<TastingLog>.Read((problems, bad) => TastingSheets.ReadPlan(_sheets.Required("attributes.csv", bad), _sheets.Required("tastings.csv", bad),
        _sheets.Optional("servings.csv", bad), _log.Value?.Lineage.Trials, problems), TastingLog.Empty).Value;

    /// <summary>The words by which remarks are counted: the store's <c>remark_words.csv</c>, or the kit's own list.</summary>
    public RemarkWords RemarkWords => _remarkWords.Value;

    /// <summary>Everything in the sheets that must be mended, sheet by sheet.</summary>
    public IReadOnlyList<CellProblem> Problems =>
        [.. _log.Problems.Concat(_facts.Problems).Concat(_store.Problems).Concat(_formulas.Problems).Concat(_batches.Problems)
            .Concat(_method.Problems).Concat(_components.Problems).Concat(_measured.Problems).Concat(_tastings.Problems)
            .Concat(_windows.Problems).Concat(_moulds.Problems).Concat(_montage.Problems).Concat(_equipment.Problems).Concat(_remarkWords.Problems).Concat(_prices.Problems).Concat(_words.Problems).Distinct()];

    /// <summary>The composition table that foods are found in: the kit's, and behind its foods those of the folder <c>composition</c> of the store.</summary>
    /// <exception cref="TableException">The store's own table must be mended.</exception>
    public CompositionTable Table => _table.Value;

    /// <summary>The sheets that were found, store first.</summary>
    public IReadOnlyList<string> SheetsFound => _sheets.Found;

    /// <summary>The sheets that are not there, each with what it would add.</summary>
    public IReadOnlyList<(string File, string WouldAdd)> SheetsMissing => _sheets.Missing;

    /// <summary>The cells of every sheet, by file: what a run compares with the run before.</summary>
    public IReadOnlyList<Sheet> Sheets => _sheets.Readable;

    /// <summary>Columns that no part of the kit reads: they are kept as they are.</summary>
    public IReadOnlyList<string> UnreadTrialColumns => _formulas.Problems.Count == 0 ? FormulaSheet.UnreadColumns(_sheets.Required("formula.csv"), _log.Value?.Lineage) : [];

    /// <summary>A trial as one batch.</summary>
    /// <exception cref="KeyNotFoundException">No trial has this name; the message names near ones.</exception>
    public Batch Trial(string name) => Batches.FirstOrDefault(batch => Names.Same(batch.Trial, name))
        ?? throw new KeyNotFoundException($"{Name} has no trial '{name}'; it has {string.Join(", ", Batches.Select(batch => batch.Trial))}.");

    /// <summary>The trial, its parent and so on; the trial alone where there is no log.</summary>
    public IEnumerable<string> LineOf(string trial) => Log?.Lineage.LineOf(trial) ?? [trial];

    /// <summary>The trial that this one was changed from; the trial itself where it is a first one.</summary>
    public string ParentOf(string trial) => LineOf(trial).Skip(1).FirstOrDefault() ?? Trial(trial).Trial;

    /// <summary>The first trial that was changed from this one; the next one in the sheet without a log; the trial itself where it is the last.</summary>
    public string NextAfter(string trial) => Log?.ChildrenOf(trial).FirstOrDefault()?.Name
        ?? Batches.SkipWhile(batch => !Names.Same(batch.Trial, trial)).Skip(1).FirstOrDefault()?.Trial ?? trial;

    /// <summary>The lines that a component's ratios stand against: from <c>components.csv</c>, or else its flours, or its heaviest line.</summary>
    public Ratios RatiosOf(string trial, string component)
    {
        var batch = Trial(trial).Find(component) ?? throw new KeyNotFoundException($"{trial} has no component '{component}' with known masses; it has {string.Join(", ", Trial(trial).Components.Select(each => each.Name))}.");
        var written = Components.Of(component, LineOf(trial))?.Base.Where(line => batch.LineGrams(line) > 0).ToArray();
        return Ratios.Of(batch, written is { Length: > 0 } ? written : Ratios.UsualBase(batch));
    }

    /// <summary>The trial as the log has it; without a log, one of which nothing but the name is known.</summary>
    public Trial LoggedTrial(string name) => Log?.Find(name) ?? new Trial { Name = Trial(name).Trial, Origin = new("formula.csv", Evidence.Sheet) };

    /// <summary>What the scores say of the trials; null without tastings.</summary>
    public TastingAnalysis? Analysis => field ??= Tastings is { } log ? new(log, reports: ReportOf) : null;

    /// <summary>What the scales of one tasting say, by mixed models; worked out once.</summary>
    /// <exception cref="KeyNotFoundException">No tasting has this name.</exception>
    public TastingReport ReportOf(string tasting)
    {
        var session = Tastings?.Session(tasting) ?? throw new KeyNotFoundException($"{Name} has no tasting '{tasting}' with scores.");
        if (!_reports.TryGetValue(session.Name, out var report)) _reports[session.Name] = report = TastingReport.Of(Tastings, session);
        return report;
    }

    /// <summary>What a test of same or different gave.</summary>
    /// <exception cref="KeyNotFoundException">There is no such test, or nobody answered it.</exception>
    public DifferenceResult TestOf(string tasting) => (Tastings is { } log ? DifferenceResult.Of(log) : []).FirstOrDefault(result => Names.Same(result.Session.Name, tasting) && result.Answered > 0)
        ?? throw new KeyNotFoundException($"{Name} has no test of same or different '{tasting}' that somebody answered.");

    /// <summary>How the scales follow the kitchen figures over the tree; empty without tastings. Worked out once.</summary>
    public IReadOnlyList<FigureEffect> FigureEffects => field ??= FigureEffect.Of(this);

    /// <summary>What every step of the tree did to every scale, makes as the unit; null without tastings. Worked out once.</summary>
    public StepEffects? Effects => field ??= StepEffects.Of(this);

    /// <summary>Every trial that has a parent against that parent, in the order of the log; none without a log.</summary>
    public IReadOnlyList<TrialStep> Steps => field ??= TrialStep.AllOf(this);

    /// <summary>The trial that the kitchen means to serve: the one that is ordered in <c>dessert.csv</c>, or else the last one made, or else the first of the log, or the last column.</summary>
    public string Candidate =>
        Facts.Text("order")?.Split(' ', ',', ';').FirstOrDefault(word => Batches.Any(batch => Names.Same(batch.Trial, word)))
        ?? Log?.Trials.Where(trial => trial.MadeOn.Count > 0).MaxBy(trial => trial.MadeOn.Max())?.Name
        ?? Log?.Trials[0].Name
        ?? Batches[^1].Trial;

    /// <summary>The pieces that are ordered (<c>12 of T10 for …</c>), or else those that the formula makes, or else one formula.</summary>
    public double WantedPieces(string trial) =>
        Facts.Text("order") is { } order && double.TryParse(order.Split(' ')[0], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var ordered) && ordered > 0 && Names.Same(trial, Candidate)
            ? ordered : Facts.Number("pieces", trial) ?? 1;

    /// <summary>What to weigh and do for a number of pieces of a trial.</summary>
    public WeighingPlan Weighing(string trial, double pieces) => WeighingPlan.For(Trial(trial), pieces, Facts.Number("pieces", trial),
        component => Method?.StepsOf(component, LineOf(trial)) ?? []);

    /// <summary>One piece of a trial as it is put together; null where there is no montage sheet.</summary>
    /// <param name="trial">The trial.</param>
    /// <param name="montageSheet">Another montage sheet of the dessert folder, such as <c>montage-domes.csv</c>, for other sizes; <c>montage.csv</c> where null.</param>
    /// <exception cref="TableException">A row of it does not fit: every such cell is named; or there is no sheet of that name.</exception>
    public AssembledPiece? PieceOf(string trial, string? montageSheet = null)
    {
        if ((montageSheet is null ? Montage : MontageNamed(montageSheet)) is not { } montage) return null;
        var (batch, line) = (Trial(trial), LineOf(trial).ToArray());
        List<CellProblem> problems = [];
        var piece = Assembler.Assemble(montage.RowsOf(line), Moulds, component => batch.Find(component) is { } own ? FactsOf(own, Components.Of(component, line)) : null, problems);
        return piece ?? throw new TableException(problems);
    }

    /// <summary>A sheet of the dessert folder that is not one of the usual ones.</summary>
    /// <exception cref="TableException">There is none of this name, or it cannot be read.</exception>
    public Sheet SheetNamed(string file) => _sheets.Another(file);

    /// <summary>Another montage sheet of the dessert folder, for other sizes.</summary>
    /// <exception cref="TableException">There is none of this name, or a cell must be mended.</exception>
    public MontageSheet MontageNamed(string file) => Part<MontageSheet?>.Read((problems, bad) => MontageSheet.Read(_sheets.Another(file), problems), null).Value!;

    /// <summary>Where a trial is sold, by the rows <c>market</c> of <c>dessert.csv</c>; none where it has none.</summary>
    /// <exception cref="TableException">A row cannot be read; every one is named.</exception>
    public IReadOnlyList<Market> Markets(string trial) => Market.Of(Facts, Trial(trial).Trial);

    /// <summary>All that is put together in a trial.</summary>
    /// <exception cref="TableException">The masses of the trial are not all known, with what is missing.</exception>
    public Mixture Whole(string trial) => Trial(trial).Whole is { FinishedGrams: > 0 } whole ? whole : throw new TableException(Trial(trial).Gaps);

    /// <summary>The list of ingredients of all that is put together in a trial.</summary>
    /// <param name="trial">The trial.</param>
    /// <param name="rules">The rule set's folder name.</param>
    /// <param name="language">The language's code: <c>fr</c>.</param>
    /// <exception cref="TableException">The masses of the trial are not all known, with what is missing; or a rule file cannot be read.</exception>
    public IngredientDeclaration IngredientList(string trial, string rules, string language)
    {
        var (batch, whole) = (Trial(trial), Whole(trial));
        var list = IngredientDeclaration.Of(ListedUses.Of(this, batch), whole.FinishedGrams, whole.WaterLostGrams, KitData.Rules(rules), language, ListedUses.WishesOf(this, batch.Trial));
        return list with { Problems = [.. list.Problems, .. CompositionFindings.StoppingList(this, batch.Trial, rules).Select(finding => finding.AsProblem)] };
    }

    /// <summary>What physics says of a trial.</summary>
    /// <exception cref="KeyNotFoundException">No trial has this name.</exception>
    public TrialPhysics Physics(string trial) => _physics.GetOrAdd(Trial(trial).Trial, name => new(this, name));

    // Water leaves a raw mass in the oven; bowl and trim do not thin what was weighed into a mould.
    private static LayerFacts FactsOf(ComponentBatch batch, ComponentNote? note) => new(note?.DensityGramsPerMillilitre, note?.RawDensityGramsPerMillilitre,
        batch.Out.WeighedInGrams > 0 ? batch.Out.FinishedGrams / batch.Out.WeighedInGrams : 1);

    private DateOnly? LastMake() => _log.Problems.Count == 0 && _log.Value?.Trials.SelectMany(trial => trial.MadeOn).ToArray() is { Length: > 0 } days ? days.Max() : null;

    private Store ReadStore(CompositionTable table, StatedFigures stated, List<CellProblem> problems, List<CellProblem> bad)
    {
        if (_sheets.Optional("ingredients.csv", bad) is not { } ingredients) return Store.None;
        var isWhole = _table.Problems.Count == 0;
        var store = Store.Read(ingredients, _sheets.Optional("specifications.csv", bad), isWhole ? _table.Value : table, stated, _asOf ?? LastMake(), problems);
        // Nobody can tell whether a food is missing from a table that cannot be read.
        if (!isWhole) problems.RemoveAll(problem => problem.File == ingredients.File && problem.Column == "food");
        return store;
    }

    private static CompositionTable WithFoodsOf(CompositionTable table, string folder)
    {
        try
        {
            return table.With(KitData.CompositionIn(folder));
        }
        catch (TableException error)
        {
            throw new TableException([.. error.Problems.Select(problem => problem with { File = $"{Store.TableFolder}/{problem.File}" })]);
        }
    }

    private TastingLog? ReadTastings(List<CellProblem> problems, List<CellProblem> bad)
    {
        var (attributes, servings, scores) = (_sheets.Optional("attributes.csv", bad), _sheets.Optional("servings.csv", bad), _sheets.Optional("scores.csv", bad));
        return attributes is null || servings is null || scores is null ? null
            : new TastingSheets(attributes, servings, scores)
            {
                Tastings = _sheets.Optional("tastings.csv", bad),
                Trials = _log.Problems.Count == 0 ? _log.Value?.Lineage.Trials : null,
            }.Read(problems);
    }
}
