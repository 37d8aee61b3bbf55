using Tamis.Tables;

namespace Tamis.Labels;

/// <summary>Reads the folder of a rule set and holds its tables against each other.</summary>
internal static class RuleSetReader
{
    public const string SettingsFile = "rule-set.csv";

    private static readonly string[] RoundingColumns =
        ["key", "unit", "from", "from_inclusive", "to", "to_inclusive", "method", "increment", "printed", "text", "alternatives", "alternative_increment", "condition"];

    private static readonly Dictionary<string, LineShown> Shown = new(Names.Comparer)
    {
        ["always"] = LineShown.Always,
        ["if known"] = LineShown.IfKnown,
        ["if present"] = LineShown.IfPresent,
        ["if asked"] = LineShown.IfAsked,
    };

    private static readonly Dictionary<string, bool> Status = new(Names.Comparer) { ["mandatory"] = true, ["voluntary"] = false };

    private static readonly Dictionary<string, RoundingMethod> Methods = new(Names.Comparer)
    {
        ["nearest"] = RoundingMethod.Nearest,
        ["significant"] = RoundingMethod.Significant,
        ["text"] = RoundingMethod.Text,
    };

    private static readonly Dictionary<string, PercentShown> Percents = new(Names.Comparer)
    {
        ["yes"] = PercentShown.Yes,
        ["optional"] = PercentShown.Optional,
        ["no"] = PercentShown.No,
    };

    private static readonly Dictionary<string, PercentFrom> PercentsFrom = new(Names.Comparer)
    {
        ["unrounded"] = PercentFrom.Unrounded,
        ["declared"] = PercentFrom.Declared,
        ["either"] = PercentFrom.Either,
    };

    private static readonly Dictionary<string, bool> Prints = new(Names.Comparer) { ["amount"] = false, ["percent"] = true };

    public static RuleSet Read(string folder)
    {
        List<CellProblem> problems = [];
        return Read(folder, problems) ?? throw new TableException(problems);
    }

    /// <summary>Reads a rule set, noting every problem; null where there was any.</summary>
    public static RuleSet? Read(string path, List<CellProblem> problems)
    {
        List<CellProblem> found = [];
        try
        {
            var folder = RuleFolder.Open(path);
            var set = ReadTables(folder, found);
            problems.AddRange(found.Select(folder.Named));
            return found is [] ? set : null;
        }
        catch (TableException error)
        {
            problems.AddRange(error.Problems.Select(problem => problem with { File = $"{Path.GetFileName(Path.TrimEndingDirectorySeparator(path))}/{problem.File}" }));
            return null;
        }
    }

    private static RuleSet ReadTables(RuleFolder folder, List<CellProblem> problems)
    {
        RuleSettings settings = new(folder.Settings(problems), problems);
        EnergyFactor[] energy = [.. folder.Rows("energy-factors.csv", ["key", "word", "content", "part_of", "kj_per_g", "kcal_per_g"], problems).Select(Energy)];
        DeclaredFigure[] declaration = [.. folder.Rows("declaration.csv", ["order", "key", "term", "indent", "unit", "content", "part_of", "status", "shown"], problems)
            .Select(row => (Order: row.RequiredDecimal("order"), Figure: Figure(row, energy))).OrderBy(row => row.Order).Select(row => row.Figure)];
        RoundingBand[] bands = [.. folder.Rows("rounding.csv", RoundingColumns, problems).Select(Band)];
        var percentFrom = settings.Choice("percent_from", PercentsFrom);
        ReferenceValue[] references = [.. folder.Rows("reference-values.csv", ["key", "unit", "value", "percent_rounding", "percent_shown"], problems).Select(row => Reference(row, percentFrom))];
        var conditions = RuleConditionReader.Read(folder, declaration, energy, problems);
        settings.MustBe("ties", "half up");
        var isPerServing = settings.Is("basis", "serving", "100 g");
        RuleSet set = new()
        {
            Name = folder.Name,
            Folder = folder,
            Title = settings.Text("name"),
            Act = settings.Text("act"),
            DeclarationTitle = settings.Text("declaration"),
            IsPerServing = isPerServing,
            Columns = PanelColumnWords.Read(settings, isPerServing),
            Languages = settings.Words("languages"),
            ProteinFactor = settings.NumberOr("protein_factor", "as published"),
            KnownSharePercent = settings.Percent("known_share_percent"),
            KnownSpreadPercent = settings.Percent("known_spread_percent"),
            ReferenceStatement = settings.TextOrNone("reference_statement"),
            InForce = new(settings.Date("in_force_from"), settings.Date("in_force_to")),
            SettingOrigins = settings.Origins,
            Declaration = declaration,
            EnergyFactors = energy,
            Rounding = new(bands, settings.Is("closing_zeros", "keep", "drop")),
            ReferenceValues = references,
            Conditions = conditions,
            Servings = [.. folder.RowsIfAny("servings.csv", ["category", "amount", "unit", "household"], problems).Select(Serving)],
        };
        // Tables that could not be read would only be held against each other in vain.
        if (problems is []) problems.AddRange(RuleSetChecks.Problems(declaration, bands, references, conditions));
        return set;
    }

    private static EnergyFactor Energy(RuleRow row) => new()
    {
        Key = row.Cells.Required("key"),
        Word = row.Cells.Required("word"),
        Formula = row.Formula("content"),
        PartOf = row.Cells.Text("part_of"),
        KilojoulesPerGram = row.Cells.Number("kj_per_g", 0),
        KilocaloriesPerGram = row.Cells.Number("kcal_per_g", 0),
        Origin = row.Origin(),
        InForce = row.InForce(),
    };

    private static DeclaredFigure Figure(RuleRow row, IReadOnlyList<EnergyFactor> energy)
    {
        var origin = row.Origin();
        var key = row.Cells.Required("key");
        return new()
        {
            Key = key,
            Term = row.Cells.Required("term"),
            Indent = row.Cells.Whole("indent", 0, 2) ?? 0,
            Unit = row.Cells.Required("unit"),
            Summands = Summands(row, key, energy, origin),
            IsEnergy = IsEnergy(row),
            IsPercentOnly = row.Cells.Choice("print", Prints) ?? false,
            Parts = row.Cells.Words("parts"),
            StandsWith = row.Cells.Words("stands_with"),
            Added = Added(row),
            NamedWhereAdded = row.Cells.Words("named_where_added"),
            IsMandatory = row.Choice("status", Status),
            Shown = row.Choice("shown", Shown),
            Origin = origin,
            InForce = row.InForce(),
        };
    }

    private static AddedContent? Added(RuleRow row)
    {
        if (row.Cells.Text("in_brackets") is not { } words) return null;
        if (!words.Contains('#')) row.Cells.Note("in_brackets", "words with # for the number, such as (# mcg folic acid)");
        if (row.Cells.Words("named_by").Count == 0) row.Cells.Note("named_by", "the words by which an ingredient says that it was added");
        if (row.Cells.Text("in_brackets_content") is null) row.Cells.Note("in_brackets_content", "the tag of its content");
        return row.Formula("in_brackets_content") is { } formula ? new(words, formula, row.Cells.Words("named_by")) : null;
    }

    private static IReadOnlyList<Summand> Summands(RuleRow row, string key, IReadOnlyList<EnergyFactor> energy, RuleOrigin origin)
    {
        if (EnergyContent.Parse(row.Cells.Required("content")) is not { } content)
            return row.Formula("content") is { } formula ? [new(key, formula, 1, origin) { PartOf = row.Cells.Text("part_of") }] : [];
        List<Summand> summands = [];
        foreach (var factor in energy.Where(factor => factor.Formula is not null))
        {
            if (content.FactorOf(factor) is { } perGram) summands.Add(new(factor.Word, factor.Formula!, perGram, factor.Origin) { PartOf = factor.PartOf, InForce = factor.InForce });
            else row.Cells.Note("content", $"energy_kcal or energy_kj; energy-factors.csv has no such factor for {factor.Word}");
        }
        return summands;
    }

    private static bool IsEnergy(RuleRow row) => EnergyContent.Parse(row.Cells.Text("content") ?? "") is not null;

    private static RoundingBand Band(RuleRow row)
    {
        var method = row.Choice("method", Methods);
        var increment = row.Decimal("increment");
        if (method != RoundingMethod.Text && increment is null or <= 0) row.Cells.Note("increment", "a step, or a number of figures, above 0");
        if (method != RoundingMethod.Text && !row.Cells.Required("printed").Contains('#')) row.Cells.Note("printed", "a pattern with # for the number, such as # g");
        return new()
        {
            Key = row.Cells.Required("key"),
            Unit = row.Cells.Required("unit"),
            Range = row.Band(),
            Method = method,
            Increment = increment ?? 0,
            Printed = row.Cells.Text("printed") ?? "",
            Text = method == RoundingMethod.Text ? row.Cells.Required("text") : "",
            Alternatives = row.Cells.Words("alternatives"),
            AlternativeIncrement = row.Decimal("alternative_increment"),
            AlternativeFigures = row.Cells.Whole("alternative_figures", 1, 15),
            If = row.Cells.Text("if") ?? "",
            Condition = row.Cells.Text("condition") ?? "",
            Origin = row.Origin(),
            InForce = row.InForce(),
        };
    }

    private static ReferenceValue Reference(RuleRow row, PercentFrom percentFrom) => new()
    {
        Key = row.Cells.Required("key"),
        Unit = row.Cells.Required("unit"),
        Value = row.Cells.RequiredNumber("value", double.Epsilon),
        UpTo = row.Cells.Number("up_to", double.Epsilon),
        PercentFrom = row.Cells.Choice("percent_from", PercentsFrom) ?? percentFrom,
        PercentRounding = row.Cells.Required("percent_rounding"),
        Shown = row.Choice("percent_shown", Percents),
        Group = row.Cells.Text("group") ?? "",
        Origin = row.Origin(),
        InForce = row.InForce(),
    };

    private static ServingSize Serving(RuleRow row) =>
        new(row.Cells.Required("category"), row.Cells.Text("amount") ?? "", row.Cells.Text("unit") ?? "", row.Cells.Text("household") ?? "", row.Origin());
}
