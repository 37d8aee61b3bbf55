namespace Tamis.Views.Tests;

/// <summary>Invented pages for looking at and for the tests of structure: a little of everything that a page can hold.</summary>
internal static class Samples
{
    private static readonly Figures Numbers = Figures.English;

    public static ChartView Scores => ScoreAgainstChange.Of(
    [
        new("Mousse firmness and gelatine", "mousse firmness", "gelatine in the mousse, %",
        [
            new("S1", [Scored("T2", 0.92, 5.31, 0.5, 12), Scored("T1", 1.13, 6.17, 0.5, 12)]),
            new("S4", [Scored("T10", 0.92, 5.91, 0.63, 6), Scored("T8", 1.13, 6.41, 0.63, 6)]) { IsChosen = true },
        ]) { DoseDecimals = 2, Below = Html.Of($"Less gelatine, softer: {Numbers.Estimate(-0.9, Interval.Between(-1.6, -0.2), signed: true).InText}.") },
        new("Shell crispness and rye", "shell crispness", "rye, % of the flour",
        [
            new("S1", [Scored("T1", 33, 5.12, 0.61, 12), Scored("T3", 60, 6.18, 0.61, 12)]),
            new("S4", [Scored("T8", 33, 3.64, 1.41, 6), Scored("T10", 60, 4.28, 1.41, 6)]) { IsChosen = true },
        ]),
        new("Liking and gelatine", "liking", "gelatine in the mousse, %", [new("a tasting with a long name", [Scored("T1", 1.13, 4.6, 0.6, 12)])]),
    ], Html.Of($"Points of 10, means with 95 % intervals; faint dots are single assessors."));

    public static ChartView Means => DotsWithIntervals.Of(
        [new("Liking by trial", [Dot("T1", 4.6, 0.6), Dot("T2", 5.9, 0.6), Dot("T3", 5.1, 0.6), Dot("T10", 6.4, 0.8) with { IsChosen = true }, new("T12, made once", 5.2, null)], Interval.Between(0, 10)) { AxisTitle = "points of 10" }],
        Html.Of($"Means of twelve assessors with 95 % intervals."));

    public static ChartView Differences
    {
        get
        {
            DotRow[] t2 = [Dot("liking", 1.27, 0.8), Dot("bay aroma", 0.37, 0.95), Dot("damson acidity", 0.15, 0.83), Dot("mousse firmness", -0.87, 0.71), Dot("mousse melt", 0.17, 0.79)];
            DotRow[] t4 = [Dot("liking", 0.8, 0.8), Dot("bay aroma", 0.54, 0.95), Dot("damson acidity", 1.11, 0.83), Dot("mousse firmness", 0.3, 0.71), Dot("mousse melt", -0.55, 0.79)];
            var axis = DotPanel.AxisAround([.. t2, .. t4]);
            return DotsWithIntervals.Of(
                [new("T2: less gelatine in the mousse", t2, axis) { DifferenceFrom = "T1" }, new("T4: less sugar in the gel", t4, axis) { DifferenceFrom = "T1" }],
                Html.Of($"Points of 10, with 95 % intervals. <b>Filled dot:</b> the interval leaves zero."));
        }
    }

    public static ChartView MadeOfBars => CompositionBars.Of("Share of each component, % by mass",
        [new(MadeOf.Water, "water"), new(MadeOf.Sugars, "sugars"), new(MadeOf.Fat, "fat"), new(MadeOf.Protein, "protein"), new(MadeOf.Fibre, "fibre"), new(MadeOf.Other, "starch, cocoa, minerals")],
        [
            new("shell", [0.040, 0.185, 0.308, 0.080, 0.046, 0.342]) { MassGrams = 98 },
            new("almond cream", [0.198, 0.237, 0.363, 0.096, 0.031, 0.074]) { MassGrams = 126 },
            new("gel", [0.738, 0.168, 0.001, 0.018, null, 0.057]) { MassGrams = 124 },
            new("wafer", [0.028, 0.390, 0.223, 0.047, null, 0.187]) { MassGrams = 10 },
            new("whole tart", [0.351, 0.200, 0.265, 0.058, 0.029, 0.097]) { MassGrams = 809, IsTotal = true },
        ],
        Html.Of($"Fibre is known for {Marks.Known(0.96)} of it. The mesh is the part that nobody has a figure for."), "g a tart");

    public static ChartView Map => RatioMap.Of("Butter and sugar of shortcrust doughs",
        new("butter, % of the flour", Interval.Between(45, 65)), new("sugar, % of the flour", Interval.Between(30, 50)),
        [new("shortbread", 66.7, 33.3), new("crumbly shell", 50, 50), new("unsweetened", 50, 0), new("crumble", 100, 100), new("your dough", 50, 40) { IsChosen = true }],
        Html.Of($"<b>Tinted:</b> where a lined sweet shell works; common practice, no source."), "The window of a sweet shell lies around 55 per cent butter and 40 per cent sugar.");

    public static IReadOnlyList<TrialNode> Trials =>
    [
        new("T1", Html.Of($"the first whole tart"))
        {
            Said = Html.Of($"Control of the first and the fourth tasting."),
            Children =
            [
                new("T4", Html.Of($"gel: added sugar 75 to 40 g"))
                {
                    Effects = [new(Html.Of($"damson acidity +1.1"), Finding.Gain), new(Html.Of($"liking +0.8, at the edge"), Finding.AtEdge)],
                    Children = [new("T10", Html.Of($"as T8, with the softer mousse of T2")) { IsChosen = true, Said = Html.Of($"Made twice.") }],
                },
                new("T2", Html.Of($"mousse gelatine 1.13 to 0.92 %")) { Effects = [new(Html.Of($"liking +1.3"), Finding.Gain), new(Html.Of($"mousse firmness −0.9"), Finding.Loss)] },
            ],
        },
    ];

    public static Working Fibre => new("fibre in 100 g, rounded to the nearest 0.1 g", 2.8, "g", new("Commission guidance of December 2012", Evidence.Memory, "table of rounding"))
    {
        From =
        [
            new("fibre in the batter", 56.68, "g", new("SR28", Evidence.Published))
            {
                From = [new("rye flour, 315 g at 11.8 g in 100 g", 37.17, "g", new("SR28", Evidence.Published, "20064")), new("candied peel, 250 g at 4.0 g in 100 g", 10, "g", new("pack label", Evidence.Supplier, "4 May 2026"))],
            },
            new("2 % stays in the bowl", 55.5, "g", new("formula.csv", Evidence.Sheet, "cake, bowl, step 4")),
            new("six cooled loaves", 1959, "g", new("formula.csv", Evidence.Sheet, "cake, yield")),
        ],
    };

    public static DataTable Changes => new("Changes of T10 against T8",
        [Column.Words("Line"), Column.Numbers("T8", "g"), Column.Numbers("T10", "g"), Column.Numbers("T10", "% of component")],
        [
            new("shell, wheat flour", Numbers.Mass(150), Numbers.Mass(90), Numbers.Share(0.172)),
            new("mousse, gelatine leaf", Numbers.Mass(10), ((Cell)Numbers.Mass(8)).Tracked("T10, mousse, gelatine leaf, g"), Numbers.Dose(0.0092)),
            new("gel, sugar", Numbers.Mass(1040), Numbers.Mass(null), Numbers.Share(null)) { Kind = RowKind.Part },
            new("all", Numbers.Mass(1200), Numbers.Mass(1100), Numbers.Share(1)) { Kind = RowKind.Total },
        ]) { Fits = true, Notes = [Html.Of($"Where a cell is empty the trial is as its parent.")] };

    public static NutritionPanelView European => new("Nutrition declaration", ["per 100 g"],
    [
        Line("Energy", "1 557 kJ\n371 kcal", new("1 557", "", "kJ"), 1), Line("Fat", "14 g", Numbers.Number(14.09, 2, "g"), 1), Line("of which saturates", "8.1 g", Numbers.Number(8.12, 2, "g"), 0.983) with { Indent = 1 },
        Line("Fibre", "2.8 g", Numbers.Number(2.83, 2, "g"), 1) with { Working = Fibre, Interval = "2.3 to 3.4", Figure = "V1, fibre, declared" }, Line("Salt", "0.46 g", Numbers.Number(0.461, 2, "g"), 1),
    ]) { Draft = "Draft: saturates known for 98 % of the mass", Beside = Html.Of($"<p>Ingredients: honey 17 %, <strong>rye</strong> flour 16 %.</p>") };

    public static NutritionPanelView American => new("Nutrition Facts", ["per serving"],
    [
        new("Calories", ["240"]) { IsHeavy = true, Unrounded = Numbers.Kilocalories(241.3), CoveredShare = 1 },
        new("Total Fat", ["8 g"]) { IsHeavy = true, Percents = ["10%"], AfterRule = true, Unrounded = Numbers.Number(8.2, 1, "g"), CoveredShare = 1 },
        new("Saturated Fat", ["4.5 g"]) { Indent = 1, Percents = ["23%"], Unrounded = Numbers.Number(4.44, 2, "g"), CoveredShare = 1 },
        new("Total Carbohydrate", ["37 g"]) { IsHeavy = true, Percents = ["13%"], Unrounded = Numbers.Number(36.6, 1, "g"), CoveredShare = 1 },
        new("Total Sugars", ["12 g"]) { Indent = 1, Unrounded = Numbers.Number(12.1, 1, "g"), CoveredShare = 1 },
        new("Includes 10 g Added Sugars", [""]) { Indent = 2, Percents = ["20%"], Unrounded = Numbers.Number(10.1, 1, "g"), CoveredShare = 0.9 },
        new("Protein", ["3 g"]) { IsHeavy = true, Unrounded = Numbers.Number(3.1, 1, "g"), CoveredShare = 1 },
        new("Vitamin D", ["2 mcg"]) { Percents = ["10%"], AfterRule = true, Unrounded = Numbers.Number(2.02, 2, "µg"), CoveredShare = 0.8 },
        new("Calcium", ["260 mg"]) { Percents = ["20%"], Unrounded = Numbers.Number(258.0, 0, "mg"), CoveredShare = 1 },
    ])
    { Form = PanelForm.Box, Servings = ["8 servings per container", "Serving size 1 slice (65 g)"], PercentHead = "% Daily Value*", Notes = ["*The % Daily Value tells you how much a nutrient in a serving of food contributes to a daily diet. 2,000 calories a day is used for general nutrition advice."] };

    /// <summary>Twelve tarts of ten components, as long as a real one: it must fit on four sheets of paper.</summary>
    public static WeighingSheet TwelveTarts => new("Weighing sheet: twelve tarts, trial T10",
    [
        Part("Rye paste", "588 g go into the ganache and the crumble", 659,
            Step([("120", "", "rye flakes", ""), ("360", "", "almonds with skin", "")], "Toast flakes and almonds on separate trays.", "150 °C", "18 to 25 min"),
            Step([("200", "", "caster sugar", ""), ("70", "", "water", "")], "Cook sugar and water to a brown caramel, pour over the hot flakes and almonds.", "175 °C", "8 to 12 min", "hot sugar: gloves, no water near, deep pan"),
            Step([], "Cool hard, break into pieces.", "20 °C", "30 to 45 min"),
            Step([("28", "", "rapeseed oil", ""), ("4", ".0", "salt", "")], "Grind with oil and salt to a flowing paste, below 55 °C, with pauses.", "", "15 to 25 min", "at least 300 g or the blade runs free")),
        Part("Crumble", "goes into the bound crumble", 713,
            Step([("180", "", "rye flour", ""), ("90", "", "wheat flour", ""), ("186", "", "demerara sugar", ""), ("120", "", "ground almonds", ""), ("198", "", "butter", "cold dice"), ("4", ".5", "salt", "")], "Rub everything to even crumbs.", "", "6 to 8 min"),
            Step([], "Chill on the tray.", "4 °C", "30 to 60 min"), Step([], "Bake, turning once, until brown through.", "155 °C", "18 to 22 min"), Step([], "Cool.", "20 °C", "20 to 30 min")),
        Part("Bound crumble", "12 rounds of 130 mm", 717,
            Step([("90", "", "cocoa butter", ""), ("240", "", "rye paste", "")], "Melt the cocoa butter, stir into the paste at 35 °C.", "35 °C", "5 to 8 min"),
            Step([("675", "", "crumble", "")], "Coat the crumble.", "", "3 to 5 min"),
            Step([], "Roll between two films to 4 mm on the frame guides; set cold.", "4 °C", "20 to 30 min"), Step([], "Cut twelve rounds of 130 mm from the sheet, freeze.", "−18 °C", "30 to 40 min")),
        Part("Gel", "12 rings of 120 mm, 124 g each", 1526,
            Step([("24", "", "gelatine leaf", "12 leaves"), ("120", "", "water", "what the leaves took up")], "Soak the leaves in cold water, weigh what they took up.", "4 °C", "10 to 15 min"),
            Step([("1 260", "", "damson puree", ""), ("120", "", "caster sugar", ""), ("81", "", "glucose syrup", "")], "Warm a third of the puree with sugar and syrup to 85 °C for two minutes; off the heat, below 60 °C, melt the gelatine in; add the rest.", "85 °C", "8 to 10 min"),
            Step([], "Pour 124 g in each insert ring at 30 °C, freeze hard.", "−30 °C", "90 to 120 min", "frozen hard before it goes into the mousse")),
        Part("Shell", "12 rings of 160 mm", 1221,
            Step([("270", "", "wheat flour", ""), ("405", "", "rye flour", ""), ("105", "", "ground almonds", ""), ("255", "", "icing sugar", ""), ("6", ".0", "salt", ""), ("420", "", "butter", "cold dice")], "Rub the cold butter into the flours, almonds, sugar and salt until no lump is left.", "", "8 to 12 min"),
            Step([("104", "", "egg yolk", "6 yolks")], "Bring together with the yolks; stop as soon as it holds.", "", "2 to 3 min", "raw egg: keep under 4 °C from here"),
            Step([], "Flatten, wrap, rest cold.", "4 °C", "90 to 180 min"), Step([], "Roll to 3 mm, cut base and strip, line the rings, trim flush, chill until firm.", "", "25 to 35 min"),
            Step([], "Part-bake on a perforated mat, no weights.", "160 °C", "13 to 15 min"), Step([], "Cool in the ring.", "", "15 to 20 min")),
        Part("Almond cream", "135 g raw in each shell", 1621,
            Step([("420", "", "butter", "18 °C"), ("375", "", "caster sugar", ""), ("3", ".0", "salt", "")], "Work butter, sugar and salt smooth, without air.", "", "4 to 6 min"),
            Step([("459", "", "egg", "9 eggs; room temperature")], "Add the eggs in four parts.", "", "5 to 7 min", "raw egg"),
            Step([("420", "", "ground almonds", ""), ("90", "", "rye flour", "toasted"), ("30", "", "maize starch", "")], "Stir in almonds, toasted rye flour and starch; spread 135 g in each part-baked shell.", "", "8 to 12 min", "contains almond"),
            Step([], "Bake in the shell until the centre is set.", "165 °C", "20 to 24 min", "core at least 75 °C"), Step([], "Cool to room temperature, lift the rings off.", "20 °C", "40 to 60 min")),
        Part("Mousse", "12 rings of 140 × 30 mm, 207 g each", 2491,
            Step([("690", "", "whole milk", ""), ("180", "", "cream 35 %", ""), ("26", "", "bay leaf", "48 leaves; torn, no mid-rib")], "Bring milk and the small cream to 80 °C with the bay, cover, steep, strain.", "80 °C", "30 to 35 min"),
            Step([("157", "", "egg yolk", "9 yolks"), ("186", "", "caster sugar", "")], "Cook with yolks and sugar, stirring, to 83 °C; hold 15 seconds.", "83 °C", "6 to 9 min", "egg custard: 83 °C, probe in the middle, then cool fast"),
            Step([("24", "", "gelatine leaf", "12 leaves"), ("120", "", "water", "what the leaves took up")], "Off the heat melt in the soaked gelatine below 60 °C.", "60 °C", "2 to 3 min"),
            Step([], "Cool on ice to 26 °C.", "26 °C", "12 to 18 min", "do not leave between 60 and 10 °C longer than your local code allows"),
            Step([("1 260", "", "cream 35 %", "whipped to soft peaks")], "Fold in the soft-whipped cream in three parts.", "", "5 to 7 min"),
            Step([], "Into the ring, upside down: 12 mm mousse, frozen gel, 4 mm mousse, crumble round flush. Level.", "", "15 to 20 min"), Step([], "Freeze to the core.", "−30 °C", "240 to 300 min", "core at −18 °C before unmoulding")),
        Part("Ganache", "174 g on each tart", 2114,
            Step([("672", "", "cream 35 %", ""), ("138", "", "honey", "")], "Bring cream and honey to 78 °C.", "78 °C", "5 to 6 min"),
            Step([("1 038", "", "dark chocolate 64 %", "")], "Pour on the chopped chocolate in three parts, stir from the middle.", "45 °C", "6 to 8 min"),
            Step([("348", "", "rye paste", "")], "Add the paste, blend without air.", "40 °C", "3 to 4 min"),
            Step([], "At 34 °C pour 174 g in each tart; set.", "34 °C", "10 to 12 min"), Step([], "Set firm.", "16 °C", "240 to 720 min")),
        Part("Wafer", "96 leaves, 8 a tart", 418,
            Step([("240", "", "icing sugar", ""), ("105", "", "rye flour", ""), ("3", ".0", "vegetable carbon", ""), ("0", ".9", "salt", "3 pinches")], "Sift sugar, rye flour, colour, salt.", "", "3 to 4 min"),
            Step([("101", "", "egg white", "3 whites"), ("32", "", "glucose syrup", "1.5 tbsp"), ("135", "", "butter", "melted")], "Stir in the white, the syrup, the melted butter; rest.", "20 °C", "30 to 60 min", "raw egg until baked"),
            Step([], "Spread through the stencil on a mat.", "", "15 to 20 min"), Step([], "Bake until dry at the edge.", "150 °C", "9 to 11 min"), Step([], "Lift while hot, curve, cool, box dry.", "", "8 to 10 min")),
        Part("Coat", "12 g on each tart", 180,
            Step([("150", "", "cocoa butter", ""), ("150", "", "dark chocolate 64 %", "")], "Melt to 45 °C, strain, fill the warm gun.", "45 °C", "15 to 20 min", "hot fat under pressure: mask and goggles"),
            Step([], "Unmould, spray the frozen mousse all round from 40 cm, 12 g on each.", "", "10 to 15 min")),
        Part("Putting together", "12 tarts, about 800 g each", null,
            Step([], "Set the sprayed mousse on the ganache.", "", "6 to 8 min"), Step([], "Thaw cold.", "4 °C", "360 to 480 min"),
            Step([], "Bring to serving temperature, plant eight leaves.", "12 °C", "20 to 30 min", "contains rye, wheat, milk, egg, almond, soya")),
    ])
    { Facts = ["Ready Saturday 28 November 2026, 11:00", "Formula × 3, rye paste × 2, coat × 1.5"], Contains = Html.Of($"<b>Contains</b> rye, wheat, almond, milk, egg, soya; beef gelatine.") };

    public static IReadOnlyList<NavLink> Links(string current) =>
        [.. new (string Title, string Href)[] { ("All pages", "index.html"), ("Chef", "chef.html"), ("Label", "label.html"), ("Weighing sheet", "sheet.html") }
            .Select(link => new NavLink(link.Title, link.Href, link.Href == current))];

    public static PageModel Chef => Page("chef.html", "Which version, and why", Html.Join(
    [
        Html.Of($"<h1>Which version, and why</h1>\n"), Notes.Lead(Html.Of($"<strong>Make T10 on Saturday as ordered.</strong> {Says.English.Of("liking", true, "T10", "T1", new(2.6, Interval.Between(1.14, 4.02)))}")),
        Notes.Verdict(
            [Says.English.Of("bay aroma", false, "T10", "T1", new(2.4, Interval.Between(0.6, 4.3)))],
            [Says.English.Of("liking", true, "T10", "T8", new(-0.2, Interval.Between(-1.6, 1.2))), Says.English.SmallestSeen(1.4)],
            [Says.English.Of("liking", true, "T4", "T1", new(0.8, Interval.Between(0.01, 1.6)))],
            [Says.English.WouldSettle("T8", "T10", 20)]),
        Html.Of($"<h2>How the trials came from each other</h2>\n"), Notes.Note(Html.Of($"Each trial hangs from the one it was changed from."), "How to read it."), TrialTree.Of(Trials),
        Html.Of($"<h2>What T10 changes against T8</h2>\n"), Changes.ToHtml(), WorkingView.Of(Fibre, open: true), Notes.Code("var t8 = dessert.Trial(\"T8\");"),
        Html.Of($"<h2>Did the score follow the change?</h2>\n"), NotebookSetup.Framed(Scores.ToHtml()), Html.Of($"<h2>Means</h2>\n"), Means.ToHtml(), Html.Of($"<h2>Differences</h2>\n"), Differences.ToHtml(),
        Html.Of($"<h2>What it is made of</h2>\n"), MadeOfBars.ToHtml(), Html.Of($"<h2>The map</h2>\n"), Map.ToHtml(),
        Notes.Caution(Html.Of($"T11 was made once. {Says.English.OneMake()}")), Notes.StopsRelease(Html.Of($"{Says.English.Draft("saturates are not known")}")),
        Notes.Small(Says.English.Window("Gelatine", 0.92, Interval.Between(1.0, 1.5), 1, "%", new("family windows", Evidence.Practice, "bavarois"), figureDecimals: 2)),
        Notes.Small(Html.Of($"Liking {Marks.Range(new(0.8, Interval.Between(0.01, 1.6)), Interval.Between(-3, 3))} butter {Marks.Gauge(60, Interval.Between(45, 65))}")),
    ]));

    public static PageModel Label => Page("label.html", "From formula to nutrition panel", Html.Join(
        [
        Html.Of($"<h1>From formula to nutrition panel</h1>\n<h2>European Union</h2>\n"), European.ToHtml(), Html.Of($"<h2>United States</h2>\n"), American.ToHtml()]));

    public static PageModel Index => Page("index.html", "Damson, toasted-rye and bay tart", Html.Join(
    [
        Html.Of($"<h1>Damson, toasted-rye and bay tart</h1>\n<h2>Pages</h2>\n"),
        IndexParts.PageList([new("Which version, and why", "chef.html", Html.Of($"Trial tree, T10 against T8.")), new("Label", "label.html", Html.Of($"Draft."))]),
        Html.Of($"<h2>What changed since the last run</h2>\n"),
        IndexParts.ChangedSince([new("formula.csv", "shell, rye flour, T10", "130 g", "135 g", [new("rye in the flour", "chef.html", "59 %", "60 %")]), new("measured.csv", "T10, height", null, "48.2 mm", [])]),
    ]));

    public static PageModel Sheet => Page("sheet.html", TwelveTarts.Title, TwelveTarts.ToHtml()) with { IsSheet = true };

    /// <summary>All sample pages by the name of their file.</summary>
    public static IReadOnlyDictionary<string, PageModel> Pages { get; } = ((string[])["index", "chef", "label", "sheet"]).ToDictionary(name => name, Make);

    /// <summary>A sample page made anew.</summary>
    public static PageModel Make(string name) => name switch { "index" => Index, "chef" => Chef, "label" => Label, _ => Sheet };

    private static PageModel Page(string file, string title, Html main) => new(title, main) { Running = "Damson, toasted-rye and bay tart", Description = title + ".", Links = Links(file) };

    private static PanelRow Line(string term, string amount, Num unrounded, double covered) => new(term, [amount]) { Unrounded = unrounded, CoveredShare = covered };

    private static DotRow Dot(string name, double value, double half) => new(name, value, Interval.Between(value - half, value + half)) { People = 12 };

    private static ScoredDose Scored(string trial, double dose, double mean, double half, int people) =>
        new(trial, dose, mean, Interval.Between(mean - half, mean + half), [.. Enumerable.Range(0, people).Select(at => Math.Clamp(mean + (at * 7 % people - people / 2.0) / 3, 0, 10))]);

    private static WeighingComponent Part(string name, string header, double? grams, params IReadOnlyList<WeighingStep> steps) =>
        new(name, steps) { Header = header, Expected = grams is { } mass ? Numbers.Mass(mass) : null, IsWeighed = grams is not null };

    private static WeighingStep Step((string Whole, string Decimals, string Name, string Note)[] lines, string what, string heat, string minutes, string caution = "") =>
        new([.. lines.Select(line => new WeighingLine(new(line.Whole, line.Decimals, "g"), line.Name, line.Note))], Html.Text(what)) { Temperature = heat, Minutes = minutes, Caution = caution };
}
