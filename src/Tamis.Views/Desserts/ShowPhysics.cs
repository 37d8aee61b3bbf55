using Tamis.Desserts;
using Tamis.Formulas;
using Tamis.Physics;

namespace Tamis.Views;

public static partial class Show
{
    /// <summary>What each component of a trial is made of, by function, as it stands on the bench.</summary>
    public static ChartView Balances(Dessert dessert, string trial) => BalanceBars.Of("What each component is made of, by function, in per cent of its finished mass",
        [.. dessert.Physics(trial).Components.Select(each => (each.Name, each.Finished))],
        Html.Of($"Each component of {trial} after its losses. A group of which nothing is there is left out; the mesh is mass of which something is not known."));

    /// <summary>Every component of a trial against the windows of its family: what lies inside, what outside, by how much, why it matters, what to try.</summary>
    public static Html CheckUps(Dessert dessert, string trial) => CheckUpTable.Of(dessert.CheckUps(trial));

    /// <summary>For each component with a figure outside, the smallest change of one or two lines that brings its shares back.</summary>
    public static Html Mends(Dessert dessert, string trial)
    {
        ComponentPhysics[] outside = [.. dessert.Physics(trial).Components.Where(each => each.CheckUp.Outside.Count > 0)];
        return outside.Length == 0 ? Notes.Paragraph(Html.Of($"Nothing lies outside a window."))
            : Notes.List(outside.Select(each => Html.Of($"<b>{Capital(each.Name)}</b>: {Typeset.Text(each.Mending.InWords)}")));
    }

    /// <summary>The water activity of each component beside the limits of microbes.</summary>
    public static ChartView WaterActivities(Dessert dessert, string trial)
    {
        var parts = dessert.Physics(trial).Components;
        return WaterActivityLadder.Of([.. parts.Select(each => LadderRow.Of(each.Name, each.WaterActivity, [.. MeasuredValues(dessert, trial, each.Name, "water activity")]))],
            caption: Html.Of($"{trial}, after its losses. The bar is how far the models that hold differ; that is not all that is unsure of it."));
    }

    /// <summary>How a component's water activity was worked out: what each model says and why one was taken.</summary>
    public static Html WaterActivityModels(Dessert dessert, string trial, string component)
    {
        if (Component(dessert, trial, component) is not { } own) return NoComponent(dessert, trial, component);
        var found = own.WaterActivity;
        return PredictionTable.Of($"Water activity of the {component}, model by model", [.. found.Answers.Select(answer => new PredictionRow(answer.Model, answer.Predicted) { Decimals = 3 })], Html.Of($"{Typeset.Text(found.Reason)}"));
    }

    /// <summary>How sweet each component is against sucrose, and where its water begins to freeze.</summary>
    public static Html SweetAndCold(Dessert dessert, string trial) => new DataTable("Sweetness and freezing point",
        [Column.Words("Component"), Column.Numbers("As sweet as", "g sucrose in 100 g"), Column.Numbers("Between", "g"), Column.Numbers("Begins to freeze", "°C"), Column.Words("At −18 °C, by its ice")],
        [.. dessert.Physics(trial).Components.Select(each => new Row(each.Name, Figures.English.Number(each.Sweet.IsKnown ? each.Sweet.Value : null, 1, ""),
            Num.Said(each.Sweet.Range is { IsPoint: false } range ? Figures.English.Between(range, 1, "") : ""),
            each.Ice.InitialFreezingPoint is { Outside.Count: > 0, IsKnown: false } ? Num.Said("too dry") : Figures.English.Number(each.Ice.InitialFreezingPoint is { IsKnown: true } point ? point.Value : null, 1, ""),
            each.Ice.InitialFreezingPoint.IsKnown ? each.Ice.HardnessAt(-18)?.Word ?? "" : ""))])
        { Caption = Html.Of($"Sweetness is of the sugars alone: cold, fat, acid and bitterness change what is tasted. Too dry: more sugar to the water than the table of freezing points covers.") }.ToHtml();

    /// <summary>Sugar that is cooked: where it begins to boil, and the water to drive off for each stage.</summary>
    public static Html SugarWork(Dessert dessert, string trial)
    {
        var numbers = Figures.English;
        List<Html> shown = [];
        foreach (var own in dessert.Physics(trial).Components)
            foreach (var step in own.Looked.Steps.Where(step => step.TemperatureCelsius is >= 104))
            {
                var cooked = Physics.Balance.Of(Losses.Mixture.Of(own.Looked.Contents.Where(content => content.Line.Step == step.Step).Select(content => content.Content)));
                // A bake is as hot but has no syrup of its own.
                if (cooked.Sugars.Whole is not { } sugar || cooked[BalancePart.Water].Whole is not { } water || sugar / cooked.FinishedGrams < 0.5 || water < 1) continue;
                var boils = Boiling.OfSucroseByTable(100 * sugar / (sugar + water));
                var stages = SugarStage.At(step.TemperatureCelsius!.Value).Select(stage => stage.Name).ToHashSet();
                shown.Add(Html.Of($"{Notes.Paragraph(Html.Of($"{Capital(own.Name)}, step {step.Step}: {numbers.Mass(sugar)} of sugar and {numbers.Mass(water)} of water begin to boil at {PredictionTable.InText(boils, 0)}; the method cooks to {numbers.Celsius(step.TemperatureCelsius)}."))}{new DataTable($"Sugar stages for the {own.Name}",
                    [Column.Words("Stage"), Column.Numbers("From", "°C"), Column.Numbers("To", "°C"), Column.Numbers("Sugar", "%"), Column.Numbers("Water left", "g"), Column.Numbers("Driven off", "g")],
                    [.. SugarStage.Kit.Select(stage => (Stage: stage, Left: CookingDown.WaterLeftGrams(sugar, stage.SucrosePercent))).Select(each => new Row(
                        stages.Contains(each.Stage.Name) ? Html.Of($"<b>{each.Stage.Name}</b>") : Html.Text(each.Stage.Name), numbers.Celsius(each.Stage.Celsius.Low), numbers.Celsius(each.Stage.Celsius.High), numbers.Number(each.Stage.SucrosePercent, 1, "%").WithoutUnit(),
                        numbers.Number(each.Left, 1, "g"), each.Left > water ? Num.Said("add water") : numbers.Number(water - each.Left, 1, "g")))]).ToHtml()}"));
            }
        return shown.Count == 0 ? Notes.Paragraph(Html.Of($"No step of {trial} cooks a syrup above 104 °C.")) : Html.Of($"{shown}{Notes.Caution(Html.Of($"{SugarStage.Caution}"))}");
    }

    /// <summary>The gelatine of each component that has some: its dose, what another strength would take by both rules, the water that the leaves carry in.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="otherBloom">The strength to change to, in grams Bloom.</param>
    public static Html Gelatines(Dessert dessert, string trial, double otherBloom = 240)
    {
        List<PredictionRow> rows = [];
        foreach (var own in dessert.Physics(trial).Components)
            foreach (var line in own.Made.In.Parts.Where(part => part.Ingredient.BloomGrams is not null && part.MassGrams > 0).GroupBy(part => part.Ingredient.Name))
            {
                var (ingredient, grams) = (line.First().Ingredient, line.Sum(part => part.MassGrams));
                Given mass = new("gelatine", grams, "g", line.First().Origin), bloom = new("strength", ingredient.BloomGrams!.Value, "g Bloom", ingredient.Origin ?? line.First().Origin);
                var other = Gelatine.Convert(mass, bloom, new("strength", otherBloom, "g Bloom", new("the strength asked for", Evidence.Sheet)));
                rows.Add(new($"{own.Name}, of all of it", Gelatine.DoseOfMixture(mass, new("mixture", own.Made.MassInGrams, "g", line.First().Origin))) { Decimals = 2 });
                if (own.Raw[BalancePart.Water].Whole is { } water) rows.Add(new($"{own.Name}, of its water", Gelatine.DoseOfWater(mass, new("water", water, "g", line.First().Origin))) { Decimals = 2 });
                rows.Add(new($"{own.Name}, as {otherBloom:0} g Bloom by mass times strength", other.Linear) { Decimals = 1, Means = Html.Of($"for {grams:0.#} g of {bloom.Value:0} g Bloom") });
                rows.Add(new($"{own.Name}, by mass times root of strength", other.SquareRoot) { Decimals = 1, Means = Html.Of($"{other.DifferencePercent:0} % more than by the other rule") });
                rows.Add(new($"{own.Name}, water that the leaves carry in", Gelatine.WaterCarriedIn(mass)) { Decimals = 0, Means = Html.Of($"weigh what they took up") });
            }
        return rows.Count == 0 ? Notes.Paragraph(Html.Of($"No component of {trial} has a gelatine whose strength is in ingredients.csv.")) : PredictionTable.Of("Gelatine", rows);
    }

    /// <summary>A component as an emulsion: its two phases, how much of the fat is solid at the table and in the cold, what is likely to go wrong.</summary>
    public static Html EmulsionOf(Dessert dessert, string trial, string component)
    {
        if (Component(dessert, trial, component) is not { } own) return NoComponent(dessert, trial, component);
        if (EmulsionPhases.Of(own.Finished) is not { } phases) return Lacking($"The {component} as an emulsion", ["the water, sugars and fat of every ingredient"]);
        var numbers = Figures.English;
        var faults = EmulsionFault.Of(phases);
        var table = new DataTable($"The {component} as an emulsion", [Column.Words("Phase"), Column.Numbers("Grams a batch", "g"), Column.Numbers("Of the whole", "%")],
            [Line("water", phases.WaterGrams), Line("sugars, in the water", phases.SugarsGrams), Line("cocoa butter", phases.CocoaButterGrams), Line("milk fat", phases.MilkFatGrams), Line("nut oil and other fat", phases.OtherFatGrams), Line("what holds the drops apart", phases.EmulsifyingSolidsGrams)]);
        var solid = string.Join(", ", new[] { 4.0, 16, 20, 32 }.Select(celsius => phases.Fat.SolidOfMixture(phases.TotalGrams, new("temperature", celsius, "°C", new("asked for", Evidence.Sheet))) is { IsKnown: true } found
            ? $"{numbers.Number(found.Value, 0, "%").Text} at {numbers.Celsius(celsius).Text} ({Firmness.Of(found.Value).Word})" : $"not known at {numbers.Celsius(celsius).Text}"));
        return Html.Of($"{table.ToHtml()}{Notes.Paragraph(Html.Of($"Fat to water {numbers.Number(phases.FatToWaterRatio, 2, "")}; sugars are {numbers.Number(phases.SugarOfWaterPhasePercent, 0, "%")} of the water phase. Solid fat in the whole: {solid}."))}{(faults.Count == 0 ? Notes.Paragraph(Html.Of($"By its phases alone nothing is likely to go wrong with it."))
            : Notes.LookAt(Html.Of($"{faults.Select(fault => Html.Of($"{Capital(fault.Fault)}: {fault.Seen}. Try: {fault.Cure}. "))}")))}");

        Row Line(string name, double grams) => new(name, numbers.Mass(grams), numbers.Share(grams / phases.TotalGrams).WithoutUnit());
    }

    /// <summary>What a spray coat does as it lands: the temperature at which it meets the frozen piece, and how it will look.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="component">The coat.</param>
    public static Html Spray(Dessert dessert, string trial, string component)
    {
        if (Component(dessert, trial, component) is not { } own) return NoComponent(dessert, trial, component);
        if (own.Looked.Steps.FirstOrDefault(step => step.TemperatureCelsius is > 20) is not { } melt) return Lacking("What the spray does", [$"a step of {component} in steps.csv with the temperature of the melted coat"]);
        var contact = SprayCoat.Contact(new("spray", melt.TemperatureCelsius!.Value, "°C", melt.Origin), new("surface", -18, "°C", new("a frozen piece", Evidence.Practice)));
        var look = SprayCoat.Finish(contact) switch { SprayFinish.Velvet => "it sets drop by drop as it lands: velvet", SprayFinish.Patchy => "some drops run together first: patchy", SprayFinish.Runs => "it runs together, shines and drips", _ => "nothing can be said of it" };
        return PredictionTable.Of("Spray on a frozen piece", [new("where spray and piece meet", contact) { Decimals = 0, Means = Html.Of($"{look}") }]);
    }

    /// <summary>The frozen share of the water of each component that freezes, against temperature.</summary>
    public static ChartView IceCurves(Dessert dessert, string trial) => TemperatureCurves.Ice(
        [.. dessert.Physics(trial).Components.Where(each => each.Ice.InitialFreezingPoint.IsKnown).Select(each => (each.Name, each.Ice))], Interval.Between(-30, 0),
        Html.Of($"Components of {trial} whose freezing point can be told from their sugars and milk salts."));

    /// <summary>The solid share of the fat of each component with cocoa butter, against temperature.</summary>
    public static ChartView SolidFats(Dessert dessert, string trial) => TemperatureCurves.SolidFat(
        [.. dessert.Physics(trial).Components.Where(each => each.Finished[BalancePart.CocoaButter].Known / each.Finished.FinishedGrams > 0.01).Select(each => (each.Name, FatOf(each.Finished)))], Interval.Between(0, 40),
        Html.Of($"Components of {trial} with cocoa butter. Cocoa butter that meets milk fat or nut oil is softer than either alone."));

    /// <summary>How the moulded part freezes: time to the core, temperatures, and pictures of its inside.</summary>
    public static Html Freezing(Dessert dessert, string trial) => HeatOf(dessert, trial, dessert.Physics(trial).Freezing, "freezes", "frozen");

    /// <summary>How the finished piece thaws: time until the last ice is gone, temperatures, and pictures of its inside.</summary>
    public static Html Thawing(Dessert dessert, string trial) => HeatOf(dessert, trial, dessert.Physics(trial).Thawing, "thaws", "free of ice");

    /// <summary>How water moves between the layers of the piece over days, and which layer goes soft when.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="days">How many days to look ahead.</param>
    public static Html WaterMoves(Dessert dessert, string trial, double days = 7)
    {
        var water = dessert.Physics(trial).Water;
        if (water.Stack is not { } stack) return Lacking("How water moves between the layers", water.Lacks);
        var course = WaterCourse.Of(stack, days, new MigrationDetail { ProfileDays = [0, Math.Min(1, days), days / 2, days] });
        var past = water.PastAtOnce.Select(layer => Notes.LookAt(Html.Of($"{Capital(layer.Name)} is past its limit of {Figures.English.WaterActivity(layer.Limit!.Figure.Value)} when it is put together: by the isotherm of {layer.Isotherm.Name} its water gives {Figures.English.WaterActivity(layer.WaterActivity)}. Dry it further, or measure its water activity: the isotherm may not be its own.")));
        return Html.Of($"{WaterMoving.Of(course, Assumptions(water.Assumed)).ToHtml()}{past}{WaterMoving.Sentences(water.Keeping(days))}");
    }

    /// <summary>What a film of fat above a layer buys it.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="layer">The layer that is to keep crisp; the film lies on it.</param>
    /// <param name="film">What the film is of, as in <c>water-movement.csv</c>.</param>
    /// <param name="days">How many days to look ahead.</param>
    public static Html FilmBuys(Dessert dessert, string trial, string layer, string film = "cocoa butter", double days = 30)
    {
        var water = dessert.Physics(trial).Water;
        if (water.Stack is not { } stack) return Lacking("What a film buys", water.Lacks);
        var at = stack.Layers.ToList().FindIndex(each => Names.Same(each.Name, layer));
        if (at < 0 || at == stack.Layers.Count - 1) return Lacking("What a film buys", [$"a layer called {layer} with another above it; there are {string.Join(", ", stack.Layers.SkipLast(1).Select(each => each.Name))}"]);
        var coated = stack.WithFilm(at, MigrationData.Kit.Film(film, 0.1));
        return WaterMoving.ByThickness(film, KeepingDays.ByThickness(coated, at, [0, 0.1, 0.2, 0.4], stack.Layers[at].Name, days, detail: PieceWater.Coarse));
    }

    /// <summary>The logs of a trial against the chosen cooking and cooling rules.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial that was logged.</param>
    /// <param name="coolingRule">The rule, as in <c>cooling-rules.csv</c>.</param>
    public static Html Logs(Dessert dessert, string trial, string coolingRule)
    {
        if (!dessert.Batches.Any(batch => Names.Same(batch.Trial, trial))) return Lacking("Cooking and cooling", [$"a trial called {trial}"]);
        var logs = dessert.Physics(trial).Logs;
        if (logs.Count == 0) return Lacking("Cooking and cooling", [$"temperatures of {trial} with a day and an hour under at in measured.csv"]);
        var stages = CoolingRule.Named(coolingRule);
        return Html.Of($"{logs.Select(log => Html.Of($"{HeatCurves.Lethality(log.Log, LethalityReference.CookChill, Html.Of($"{log.Component ?? "the piece"}, {log.Trial}, make {log.Make}.")).ToHtml()}{CoolingOf(log, stages)}"))}{Notes.Caution(Html.Of($"{CoolingRule.Deferral}"))}");
    }

    /// <summary>The usual cautions for making a trial: each hazard with the components and steps that call for it.</summary>
    public static Html CautionsOf(Dessert dessert, string trial)
    {
        var own = dessert.Physics(trial);
        Caution[] all = [.. own.Components.SelectMany(each => Cautions.Of(each.Looked)), .. Cautions.Of("assembly", own.Assembly)];
        var rows = all.GroupBy(each => each.Rule).OrderBy(group => group.Key.Of).Select(group => new Row(
            group.Key.Hazard, string.Join("; ", group.GroupBy(each => each.Component).Select(of => $"{of.Key}: {string.Join(", ", of.Select(each => each.Because).Distinct())}")),
            Html.Of($"{group.Key.Caution} <b>{group.Key.Practice}</b>"), group.Key.Source.ToString()));
        var (allergens, _, unseen) = AllergensHeld.By(own.Components.SelectMany(each => each.Made.In.Parts).Select(part => part.Ingredient));
        Html said = Html.Of($"{(allergens.Count > 0 ? Html.Of($"Who tastes or eats it must know first: it holds {string.Join(", ", allergens)}.") : Html.Empty)}{(unseen.Count > 0 ? Html.Of($" Nobody wrote down the allergens of {string.Join(", ", unseen)}.") : Html.Empty)}");
        return Html.Of($"{Notes.Caution(Html.Of($"{CautionRule.Deferral} {said}"))}{new DataTable("Cautions", [Column.Words("Hazard"), Column.Words("Where"), Column.Words("What can happen, what is done"), Column.Words("Source")], [.. rows]) { IsWide = true, LeastRem = 44 }.ToHtml()}");
    }

    /// <summary>What was measured on a trial beside what the models say of it, with the miss.</summary>
    public static Html PredictedAndMeasured(Dessert dessert, string trial) => PredictedBesideMeasured.Of(
        [.. PredictedFigure.AllOf(dessert.Physics(trial)).Select(each => new PredictedRow(each.Component ?? "one piece", each.What, each.Predicted, each.Measured)
            { Decimals = each.What is var what && (Names.Same(what, "density") || Names.Same(what, "water activity")) ? 2 : Names.Same(what, "Brix") || Names.Same(what, "pH") || Names.Same(what, "height") || each.Predicted.Unit == "°C" ? 1 : 0 })]);

    private static Html CoolingOf(MeasuredLog log, IReadOnlyList<CoolingRule> stages) => new DataTable($"Cooling of {log.Component ?? "the piece"} against the rule {stages[0].Rule}",
        [Column.Words("Stage"), Column.Numbers("From", "°C"), Column.Numbers("To", "°C"), Column.Numbers("At most", "h"), Column.Numbers("Took", "h"), Column.Words("Finding"), Column.Words("Source")],
        [.. stages.Select(stage => (stage, verdict: stage.Check(log.Log))).Select(each => new Row(each.stage.Stage, Figures.English.Celsius(each.stage.FromCelsius), Figures.English.Celsius(each.stage.ToCelsius),
            Figures.English.OneDecimal(each.stage.MostHours), Figures.English.OneDecimal(each.verdict.Minutes / 60), Words(each.verdict.Outcome), each.stage.Source.ToString()))]).ToHtml();

    private static string Words(CoolingOutcome outcome) => string.Concat(outcome.ToString().Select((letter, at) => at > 0 && char.IsUpper(letter) ? " " + char.ToLowerInvariant(letter) : letter.ToString()));

    private static Html HeatOf(Dessert dessert, string trial, HeatCourse course, string verb, string done)
    {
        if (course is not { History: { } history, Piece.Piece: { } piece, Step: { } step, Transfer: { } transfer }) return Lacking($"How the piece {verb}", course.Lacks);
        var numbers = Figures.English;
        var goal = numbers.Number(course.GoalCelsius, 1, "°C");
        var when = course.Minutes is { } minutes
            ? Html.Of($"All of it is {done}, past {goal}, after about <strong>{Hours(minutes)}</strong>{Between(course)}.")
            : Html.Of($"It is not {done} all through, past {goal}, by {Hours(history.Readings[^1].Minutes)}{Between(course)}.");
        var plan = step.Minutes is { } planned ? Html.Of($" The method gives it {numbers.Minutes(planned)} in the {step.Equipment} at {numbers.Celsius(step.TemperatureCelsius)}.") : Html.Empty;
        if (course.Minutes > step.Minutes?.High || course.Minutes is null && step.Minutes is not null) plan += Html.Of($" By this figure that is too short: probe the middle before it goes on.");
        var caption = Html.Of($"Worked out from composition, density and ice of each layer, in air that takes {numbers.Number(transfer.Range!.Value.Low, 0, "")} to {numbers.Number(transfer.Range.Value.High, 0, transfer.Unit)}. {Assumptions(course.Assumed)}");
        var fields = history.Fields.Where(field => field.Minutes <= history.Readings[^1].Minutes).ToArray();
        return Html.Of($"{Notes.Paragraph(when + plan)}{HeatCurves.Course($"{dessert.Name}, {trial}: the piece {verb}", history, caption, [new("goal", course.GoalCelsius)]).ToHtml()}{TemperatureSection.Of($"Inside the piece as it {verb}", piece, fields, Html.Of($"To scale."))}");
    }

    private static Html Between(HeatCourse course) => course.Between switch
    {
        ({ } early, { } late) => Html.Of($" ({Hours(early)} in the best air of the range, {Hours(late)} in the poorest)"),
        ({ } early, null) => Html.Of($" ({Hours(early)} in the best air of the range, longer than was looked at in the poorest)"),
        _ => Html.Empty,
    };

    private static string Hours(double minutes) => minutes < 90 ? Figures.English.Minutes(minutes).Text : Figures.English.Number(minutes / 60, 1, "h").Text;

    private static Html Assumptions(IReadOnlyList<string> assumed) => assumed.Count == 0 ? Html.Empty : Html.Of($"Taken for granted: {string.Join("; ", assumed.Select(each => each.TrimEnd('.')))}.");

    private static ComponentPhysics? Component(Dessert dessert, string trial, string component) => dessert.Physics(trial).Components.FirstOrDefault(each => Names.Same(each.Name, component));

    private static Html NoComponent(Dessert dessert, string trial, string component) =>
        Lacking("This", [$"a component called {component}; {trial} has {string.Join(", ", dessert.Physics(trial).Components.Select(each => each.Name))}"]);

    private static Html Lacking(string what, IReadOnlyList<string> lacks) => Notes.LookAt(Html.Of($"{what} cannot be told without {string.Join("; ", lacks)}."));

    private static FatPhase FatOf(Balance balance) => new(balance[BalancePart.CocoaButter].Known, balance[BalancePart.MilkFat].Known, balance.Together(BalancePart.NutFat, BalancePart.EggFat, BalancePart.OtherFat, BalancePart.UnsplitFat).Known);

    private static IEnumerable<double> MeasuredValues(Dessert dessert, string trial, string component, string what) =>
        dessert.Measured.Where(each => Names.Same(each.Trial, trial) && Names.Same(each.Component, component) && Names.Same(each.What, what)).Select(each => each.Value);
}
