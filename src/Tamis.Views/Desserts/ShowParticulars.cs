using System.Globalization;
using Tamis.Desserts;
using Tamis.Labels;
using Tamis.Physics;

namespace Tamis.Views;

public static partial class Show
{
    /// <summary>Everything beside panel and list that a pack must bear: statements that the formula triggers, net quantity, date, additives against their levels; and apart from them the workshop's own cautions.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="rules">The rule set's folder name: <c>eu</c>.</param>
    /// <param name="language">The language of the pack.</param>
    /// <param name="day">The day whose rules count; with no day, those that have no end.</param>
    public static Html Particulars(Dessert dessert, string trial, string rules, string language = "en", DateOnly? day = null) =>
        Part("Statements", Guarded(trial, "statements", () => StatementsOf(dessert, trial, rules, language, day)))
        + Part("Net quantity", NetQuantity(dessert, trial, rules, language)) + Part("Date and storage", DateMark(dessert, trial, rules, language))
        + Part("Additives", AdditiveLevels(dessert, trial, rules)) + Part("The workshop’s own cautions, apart from what the law asks for", Guarded(trial, "cautions", () => OwnCautions(dessert, trial))) + Aid();

    /// <summary>Everything beside panel and list that a pack must bear in one of a trial's markets.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="market">The market.</param>
    /// <param name="isFirst">Whether it is the first of its rule set: of a further language there are the words alone, because all else is the same.</param>
    public static Html Particulars(Dessert dessert, string trial, Market market, bool isFirst = true) =>
        isFirst ? Particulars(dessert, trial, market.Rules, market.Language) : Guarded(trial, "statements", () => WordsOf(dessert, trial, market.Rules, market.Language));

    /// <summary>The net quantity of a pack, how far a single one may fall short, and what a piece of the formula comes to.</summary>
    public static Html NetQuantity(Dessert dessert, string trial, string rules, string language = "en") => Guarded(trial, "net quantity", () => NetQuantityOf(dessert, trial, rules, language));

    /// <summary>What a competent person needs to decide the date mark, and how the law has it written: the kit never sets a date.</summary>
    public static Html DateMark(Dessert dessert, string trial, string rules, string language = "en") => Guarded(trial, "date prompt", () => DateOf(dessert, trial, rules, language));

    /// <summary>Every additive of a trial against what the law allows of it.</summary>
    public static Html AdditiveLevels(Dessert dessert, string trial, string rules) => Guarded(trial, "additives", () => AdditivesOf(dessert, trial, rules));

    private static Html Part(string heading, Html content) => content.IsEmpty ? content : Html.Of($"<h3>{heading}</h3>\n") + content;

    private static Html StatementsOf(Dessert dessert, string trial, string rules, string language, DateOnly? day)
    {
        var set = KitData.Rules(rules);
        var all = TrialParticulars.Of(dessert, trial, rules, day);
        if (all.Count == 0) return Notes.Small(Html.Of($"{set.Title}: the kit’s rules have no statement that a formula could trigger."));
        List<(string, Html)> said = [];
        said.AddRange(all.Where(each => each.State == ParticularState.Applies).Select(each => StatementLine(each, rules, language)));
        foreach (var each in all.Where(each => each.State == ParticularState.CannotBeSaid)) said.Add(("Cannot be said", Html.Of($"{Capital(each.Rule.Name)}{(each.Because.Length > 0 ? $" ({each.Because})" : "")}: supply {each.Supply}.")));
        foreach (var each in all.Where(each => each.State == ParticularState.Lifted)) said.Add(("Lifted, if it holds", Html.Of($"{Capital(each.Rule.Name)}: {each.Because}. Wanted: {each.Supply}.")));
        if (said.Count == 0) said.Add(("State", Html.Of($"{set.Title}: the formula of {trial} triggers none of the {all.Count} statements in the kit’s rules.")));
        return Notes.Verdict(said) + Notes.Folded("Every statement that the rules have, and why it stands or does not", new DataTable($"Statements of {set.Title}",
            [Column.Words("Statement"), Column.Words("State"), Column.Numbers("In it"), Column.Numbers("Limit"), Column.Words("Because"), Column.Words("Rule")],
            [.. all.Select(each => new Row(Capital(each.Rule.Name), each.State switch { ParticularState.Applies => "stands", ParticularState.CannotBeSaid => "cannot be said", ParticularState.Lifted => "lifted, if it holds", _ => "does not stand" },
                each.Amount is { } amount ? Num.Said($"{(amount.IsWhole ? "" : "at least ")}{Short(amount.Known)}\u202f{each.Unit}") : Num.Said(""),
                each.Rule.Content is null ? Num.Said("") : Num.Said($"{each.Rule.Test.InWords} {Short((double)each.Rule.Limit)}\u202f{each.Unit}"),
                each.State == ParticularState.CannotBeSaid ? $"supply {each.Supply}" : each.Because,
                Html.Of($"{each.Rule.Origin.ToString()}{(each.Rule.Origin.Note.Length > 0 ? $". {Capital(each.Rule.Origin.Note)}." : "")}")))]) { IsWide = true, LeastRem = 50 }.ToHtml());
    }

    private static (string, Html) StatementLine(Particular stated, string rules, string language) => stated.Rule.Wording.Count > 0 && stated.In(language) is null
        ? ("Stops release", Html.Of($"{Capital(stated.Rule.Name)} must be stated, and there is no wording in the language “{language}”: a term in its column of {ParticularRules.File}, {rules}. Because: {stated.Because}."))
        : ("State", Html.Of($"{(stated.In(language) is { } words ? Html.Of($"<strong lang=\"{language}\">{words}</strong>, ") : Html.Empty)}{stated.Rule.Place}. Because: {stated.Because}{AmountIn(stated)}."));

    // What a further language of a rule set says in its own words.
    private static Html WordsOf(Dessert dessert, string trial, string rules, string language)
    {
        List<(string, Html)> lines = [.. TrialParticulars.Of(dessert, trial, rules).Where(each => each.State == ParticularState.Applies && each.Rule.Wording.Count > 0).Select(each => StatementLine(each, rules, language))];
        var net = Tamis.Desserts.NetQuantity.Of(dessert, trial, rules);
        if (net.Stated(language) is { } stated) lines.Add(("Net quantity", Html.Of($"<strong lang=\"{language}\">{stated.Text}</strong>.")));
        var prompt = DatePrompt.Of(dessert, trial, rules);
        if (prompt.Mark is not null) lines.Add(DateLine(prompt, rules, language));
        if (prompt.Keep is not null) lines.Add(KeepLine(dessert, prompt, language));
        return Notes.Verdict(lines);
    }

    private static string AmountIn(Particular particular) => particular.Amount is { } amount
        ? $"{(particular.Because.Length > 0 ? ": " : "")}{(amount.IsWhole ? "" : "at least ")}{Short(amount.Known)}\u202f{particular.Unit}{(particular.Rule.Limit == 0 ? "" : $", the limit is {Short((double)particular.Rule.Limit)}")}" : "";

    private static Html NetQuantityOf(Dessert dessert, string trial, string rules, string language)
    {
        var net = Tamis.Desserts.NetQuantity.Of(dessert, trial, rules);
        if (net.Stated(language) is not { } stated) return Notes.Small(Html.Of($"The quantity of a pack is not known: a row net_g in dessert.csv, or net_ml where it is sold by volume."));
        var (quantity, unit) = net.NominalMillilitres is { } volume ? (Short(volume), "ml") : (Short(net.NominalGrams ?? 0), "g");
        var isWordedSo = stated.Text == $"{quantity} {unit}";
        var weighed = net is { NominalMillilitres: not null, NominalGrams: { } grams } ? $" ({Short(Math.Round(grams, 1))}\u202fg by density_g_ml)" : "";
        List<(string, Html)> lines = [("Net quantity", Html.Of($"{quantity}\u202f{unit}{weighed}.{(net.Origin is { } origin ? Marks.From(origin) : Html.Empty)}{(isWordedSo && stated.Origin is { } plain ? Html.Of($" <small>{plain.ToString()}</small>") : Html.Empty)}"))];
        if (!isWordedSo && stated.Origin is { } rule) lines.Add(("On the pack", Html.Of($"<strong>{stated.Text}</strong>. <small>{rule.ToString()}</small>")));
        if (net.NominalGrams is { } nominal) lines.Add(net.ShortfallGrams is { } shortfall
            ? ("A pack may be short", Html.Of($"by {Short((double)shortfall)}\u202fg: down to {Short(nominal - (double)shortfall)}\u202fg. {net.Band!.Origin.ToString()}{(net.Band.Origin.Note.Length > 0 ? $": {net.Band.Origin.Note}" : "")}."))
            : ("A pack may be short", Html.Of($"by how much is not in the kit’s rules ({KitData.Rules(rules).Title}).")));
        if (net.PieceGrams is { } piece) lines.Add(("A piece of this formula", Html.Of($"{Short(Math.Round(piece, 1))}\u202fg, {(net.WeighedGrams is null ? "by the formula: weigh it" : $"by the weighed yield{(net.ComputedGrams is { } computed ? $" ({Short(Math.Round(computed, 1))}\u202fg by the formula)" : "")}")}.")));
        lines.AddRange(net.Problems.Select(problem => ("Stops release", Html.Text(Typeset.Text(problem)))));
        var others = net.Rules.Rules.Select(each => Html.Of($"{Capital(each.Word)}: {Typeset.Text(each.Rule)}. <small>{each.Origin.ToString()}</small>")).ToArray();
        return Notes.Verdict(lines) + (others.Length == 0 ? Html.Empty : Notes.Folded("What else the rules say of quantities", Notes.List(others)));
    }

    private static Html DateOf(Dessert dessert, string trial, string rules, string language)
    {
        var prompt = DatePrompt.Of(dessert, trial, rules);
        List<(string, Html)> lines = [];
        lines.Add(DateLine(prompt, rules, language));
        if (prompt.Days is { } days) lines.Add(("It keeps", Html.Of($"{days} days, as dessert.csv says{(prompt.Form is { } form ? Html.Of($": {form.Rule} <small>{form.Origin.ToString()}</small>") : Html.Empty)}.")));
        lines.Add(KeepLine(dessert, prompt, language));
        if (prompt.Components.Count > 0)
        {
            var moistest = prompt.Components[0];
            var unknown = prompt.NotKnown.Count == 0 ? "" : $" It is not known for {AndAll(prompt.NotKnown)}: measure {(prompt.NotKnown.Count == 1 ? "it" : "them")}.";
            lines.Add(("For a competent person", moistest.Ratio is not { } ratio ? Html.Of($"No water activity is known.{unknown}")
                : Html.Of($"The moistest part is the {moistest.Component}, at a water activity of {Figures.WaterActivity(ratio).Text} ({(moistest.Measured is null ? "predicted: measure it" : "measured")}). {(prompt.NotStopped.Count == 0 ? "By water alone no group of microbes in the kit’s table grows." : $"Water alone does not stop {string.Join("; ", prompt.NotStopped.Select(limit => limit.Short))}.")}{(prompt.OverChillingLimit is { } limit ? $" It lies over {Figures.WaterActivity(limit.WaterActivityRatio).Text}, the limit under which some countries ask for no chilling: is it a food for a use by date?" : "")}{unknown}")));
        }
        return Notes.Verdict(lines) + (prompt.Components.Count == 0 ? Html.Empty : Notes.Folded("What the date hangs on, part by part", new DataTable($"What the date of {trial} hangs on",
            [Column.Words("Part"), Column.Numbers("Water activity"), Column.Words("Models differ"), Column.Words("Where from"), Column.Numbers("Hottest step", "°C"), Column.Numbers("pH, measured")],
            [.. prompt.Components.Select(each => new Row(Capital(each.Component), Figures.WaterActivity(each.Ratio), each.Measured is null && each.WaterActivity.Spread is { } spread ? Figures.Between(spread, 2, "") : "", each.Measured is null ? each.WaterActivity.Reason : "measured.csv",
                each.HottestCelsius is { } hot ? Figures.Number(hot, 0, "") : Num.Said("not written"), each.MeasuredPh is { } ph ? Figures.Number(ph, 1, "") : Num.Said("")))]) { IsWide = true }.ToHtml()))
            + Notes.Caution(Html.Of($"{DatePrompt.Deferral} {MicrobialLimit.Caution}"));
    }

    private static (string, Html) DateLine(DatePrompt prompt, string rules, string language) => prompt switch
    {
        { Asked: null } => ("Date", Html.Of($"dessert.csv names no date_kind. The law knows: {string.Join("; ", prompt.Rules.Where(rule => rule.Kind == DateRuleKind.Mark).Select(rule => $"{rule.Name}, {rule.Rule}"))}.")),
        { Mark: null } => ("Stops release", Html.Of($"“{prompt.Asked}” is no date mark of these rules: {string.Join(", ", prompt.Rules.Where(rule => rule.Kind == DateRuleKind.Mark).Select(rule => rule.Name))}.")),
        { Mark: { } mark } => mark.Wording.GetValueOrDefault(language) is { } words
            ? ("Date", Html.Of($"<strong lang=\"{language}\">{words}</strong>, as dessert.csv asks: {mark.Rule}. <small>{mark.Origin.ToString()}</small>"))
            : ("Stops release", Html.Of($"there are no words for {mark.Name} in the language “{language}”: a term in its column of date-marking.csv, {rules}.")),
    };

    private static (string, Html) KeepLine(Dessert dessert, DatePrompt prompt, string language) => prompt.Keep is not { } keep ? ("How to keep it", Html.Of($"Nobody has said: a row keep in dessert.csv."))
        : dessert.Words.Said(keep, language) is { } kept ? ("How to keep it", Html.Of($"<span lang=\"{language}\">{Capital(Typeset.Text(kept))}</span>, as dessert.csv says."))
        : ("Stops release", Html.Of($"There is no term for “{Typeset.Text(keep)}” in the language “{language}”: a row in the store’s words.csv."));

    private static Html AdditivesOf(Dessert dessert, string trial, string rules)
    {
        var set = KitData.Rules(rules);
        var checks = TrialParticulars.Additives(dessert, trial, rules);
        var unknown = Html.Join(TrialParticulars.UnknownAdditives(dessert, trial, rules).Select(each => Notes.StopsRelease(
            Html.Of($"“{each.Named}” of {each.Ingredient.Name} is no additive that the kit knows: nothing can be said of it. Supply its number, or a row more in data/rules/additives.csv with its source.{(each.Ingredient.Origin is { } origin ? Marks.From(origin) : Html.Empty)}"))));
        if (checks.Count == 0) return unknown + Notes.Small(Html.Of($"No additive is known in {trial}: none is weighed, and no list of a compound names one."));
        var stops = Html.Join(checks.Where(each => each.Verdict is LevelVerdict.NotPermitted or LevelVerdict.Over).Select(each => Notes.StopsRelease(
            Html.Of($"{Capital(each.Use.Additive.Name)} ({each.Use.Additive.Number}), by way of {each.Use.Ingredient.Name}: {(each.Verdict == LevelVerdict.Over ? "over the limit" : "not permitted")} ({set.Title}). {each.Level!.Origin.ToString()}"))));
        return unknown + stops + new DataTable($"Additives of {trial} against their levels, {set.Title}",
            [Column.Words("Additive"), Column.Words("By way of"), Column.Words("Category"), Column.Numbers("At most there"), Column.Numbers("Limit"), Column.Words("Verdict"), Column.Words("Rule")],
            [.. checks.OrderByDescending(each => each.Verdict).Select(each => new Row($"{each.Use.Additive.Name}, {each.Use.Additive.Number}", each.Use.Ingredient.Name, each.Category,
                each.MostMgPerKg is { } most ? Num.Said($"{Short((double)Math.Round(most, most < 100 ? 1 : 0))}\u202fmg/kg") : Num.Said("not known"),
                each.Level is null ? Num.Said("") : Num.Said(each.Level is { IsPermitted: false } ? "none" : each.Level.LimitMgPerKg is { } limit ? $"{Short((double)limit)}\u202fmg/kg" : "as needed"),
                each.Verdict switch
                {
                    LevelVerdict.Within => "within the limit", LevelVerdict.AsNeeded => "allowed", LevelVerdict.CarriedOver => $"carried over: allowed in {each.Category}", LevelVerdict.NoRow => $"no row in the kit’s table: {each.Supply}",
                    LevelVerdict.CannotBeSaid => $"cannot be said: supply {each.Supply}", LevelVerdict.Over => "over the limit", _ => "not permitted",
                },
                each.Level is { } level ? Html.Of($"{(level.ExpressedAs.Length > 0 ? $"Limit as {level.ExpressedAs}. " : "")}{level.Origin.ToString()}{(level.Condition.Length > 0 ? $". For a person: {level.Condition}." : "")}") : Html.Of($"none in the kit’s table")))])
        { IsWide = true, LeastRem = 54, Caption = Html.Of($"An additive’s own mass is taken as all of what was weighed, so that figures are upper bounds. The kit’s table holds what pastry meets; it is not the law’s whole list.") }.ToHtml();
    }

    private static Html OwnCautions(Dessert dessert, string trial)
    {
        var own = TrialParticulars.Own(dessert, trial);
        return own.Count == 0 ? Html.Empty : Notes.List(own.GroupBy(each => each.Rule.Hazard).Select(same => Html.Of($"{Capital(same.Key)} ({AndAll(same.Select(each => each.Because).Distinct())}): {Typeset.Text(same.First().Rule.Caution)} {Typeset.Text(same.First().Rule.Practice)} <small>{Sources.InWords(same.First().Rule.Source)}</small>")))
            + Notes.Small(Html.Of($"{CautionRule.Deferral}"));
    }

    private static string Short(double value) => (Math.Abs(value) >= 10000 ? value.ToString("#,0", CultureInfo.InvariantCulture).Replace(',', '\u202f') : Math.Round(value, Math.Abs(value) < 10 ? 2 : 1).ToString("0.##", CultureInfo.InvariantCulture)).Replace('-', '−');
}
