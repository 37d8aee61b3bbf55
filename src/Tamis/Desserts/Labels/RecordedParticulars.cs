using System.Globalization;
using Tamis.Labels;

namespace Tamis.Desserts;

/// <summary>What a record of a label holds beside panel, list and claims: the particulars and statements of the pack, the front of it, and what those rest on.</summary>
internal sealed class RecordedParticulars
{
    private readonly Dessert _dessert;
    private readonly string _trial;
    private readonly RuleSet _rules;
    private readonly string _language;
    private readonly IReadOnlyList<Particular> _statements;
    private readonly IReadOnlyList<FrontOfPackScheme> _schemes;
    private readonly NetQuantity _net;
    private readonly DatePrompt _date;
    private readonly IReadOnlyList<CompositionFinding> _findings;
    private readonly TrialSymbol _symbol;
    private readonly IReadOnlyDictionary<string, LayoutRule> _leftOff;

    public RecordedParticulars(Dessert dessert, string trial, RuleSet rules, string language)
    {
        (_dessert, _trial, _rules, _language) = (dessert, trial, rules, language);
        (_statements, _schemes) = (TrialParticulars.Of(dessert, trial, rules.Name), TrialFrontOfPack.Of(dessert, trial, rules.Name));
        (_net, _date) = (NetQuantity.Of(dessert, trial, rules.Name), DatePrompt.Of(dessert, trial, rules.Name));
        _symbol = TrialSymbol.Of(dessert, trial, rules.Name);
        _leftOff = DessertLabel.LeftOff(dessert, trial, rules, language);
        _findings = [.. CompositionFindings.OfNames(dessert, trial, rules.Name), .. CompositionFindings.OfAdditives(dessert, trial, rules.Name)];
    }

    // The front of the pack is recorded as what the rules give it; whether a voluntary scheme is used is for whoever prints the pack.
    public IReadOnlyList<RecordSection> Sections =>
    [
        new("Particulars", true, [.. Printed]),
        new("Statements", true, [.. Stated.Select(each => new RecordRow(each.Rule.Name, $"{each.In(_language) ?? "to be stated"}; {each.Rule.Place}", each.Rule.Origin.ToString()))]),
        new("Front of pack", true, [.. from scheme in _schemes where scheme.StandsOnPack from figure in scheme.Figures select new RecordRow(KeyOf(scheme, figure), figure.Given, figure.Origin?.ToString() ?? "")]),
        new("What the particulars rest on", false, [.. Grounds]),
        new("Figures of the front of pack", false, [.. _schemes.SelectMany(scheme => scheme.Figures.Select(figure => new RecordRow(KeyOf(scheme, figure), FoundOf(figure), figure.Origin?.ToString() ?? "")).Append(new(scheme.Title, scheme.Verdict, "")))]),
        new("Names and additives", false, [.. _findings.DistinctBy(each => each.Key).Select(each => new RecordRow(each.Key, $"{each.Verdict}: {each.Why}{(each.Supply.Length > 0 ? $"; {each.Supply}" : "")}", each.Rule?.ToString() ?? ""))]),
    ];

    /// <summary>What stops the release of the pack and is no matter of panel, list and claims.</summary>
    public IEnumerable<string> Hindrances =>
    [
        .. _net.Problems,
        .. Apart,
        .. _findings.Where(each => each.Stops && !each.IsOfList).Select(each => each.AsProblem.ToString()),
        .. _symbol.Lacks is { } lacks ? [lacks] : Array.Empty<string>(),
        .. DessertLabel.MissingForSale(_dessert, _trial, _rules, _language, ["panel", "list", "allergens", "particulars", "symbol", .. _dessert.Facts.Text("name", _trial) is null ? Array.Empty<string>() : ["fact name"]]),
        .. _statements.Where(each => each.State == ParticularState.CannotBeSaid).Select(each => $"whether {each.Rule.Name} must be stated cannot be said: supply {each.Supply}"),
        .. Stated.Where(each => each.Rule.Wording.Count > 0 && each.In(_language) is null).Select(each => $"{each.Rule.Name} must be stated, and there is no wording in the language '{_language}': a term in its column of {ParticularRules.File}, {_rules.Name}"),
        .. _date is { Asked: { } asked, Mark: null } ? [$"'{asked}' is no date mark of these rules ({Cell("date_kind")})"] : Array.Empty<string>(),
        .. _date.Mark is { } mark && !mark.Wording.ContainsKey(_language) ? [$"there are no words for {mark.Name} in the language '{_language}': a term in its column of date-marking.csv, {_rules.Name}"] : Array.Empty<string>(),
        .. Texts.Any(text => text.Key == "origin") && !OriginWords.HasThem(_rules, _language) ? [$"there are no words before the place of origin in the language '{_language}': a term in the row 'origin' of panel-words.csv, {_rules.Name}"] : Array.Empty<string>(),
        .. Texts.Where(text => text.IsTranslated && _dessert.Words.Said(text.Written, _language) is null).Select(text => $"there is no term for '{text.Written}' in the language '{_language}': a row in the store’s words.csv ({text.Source})"),
    ];

    // As the rows 'face' spread it: what the law wants in one field of vision.
    private IEnumerable<string> Apart => !LabelAsked.HasPack(_dessert) ? [] : PackFace.Apart(_rules, LabelAsked.Faces(_dessert, _trial, LabelAsked.Pack(_dessert, _trial)),
            part => part switch { "net quantity" => _net.NominalGrams is not null, "warning" => Stated.Any(each => each.Rule is { IsWithName: false, Wording.Count: > 0 }), _ => true },
            part => part == "name" ? [.. Stated.Where(each => each.Rule.IsWithName).Select(each => each.In(_language)).OfType<string>().Select(Names.Capital)] : [])
        .Where(each => each.IsLaw).Select(each => each.Words);

    private IEnumerable<Particular> Stated => _statements.Where(each => each.State == ParticularState.Applies);

    // An address and a lot are the same in every language.
    private IEnumerable<(string Key, string Fact, string Written, bool IsTranslated, string Source)> Texts =>
        from text in new[] { ("storage", "keep", true), ("instructions", "instructions", true), ("origin", "origin", true), ("name and address", "business", false), ("lot", "lot", false) }
        where _dessert.Facts.Text(text.Item2, _trial) is not null
        select (text.Item1, text.Item2, _dessert.Facts.Text(text.Item2, _trial)!, text.Item3, Cell(text.Item2));

    private IEnumerable<RecordRow> Printed =>
    [
        new("name of the food", Said(_dessert.Name), Cell("name")),
        .. _net.Stated(_language) is { } stated ? [new RecordRow("net quantity", stated.Text, _net.Origin?.ToString() ?? "")] : Array.Empty<RecordRow>(),
        .. _date.Asked is { } asked ? [new RecordRow("date mark", _date.Mark?.Wording.GetValueOrDefault(_language) ?? asked, Cell("date_kind"))] : Array.Empty<RecordRow>(),
        .. _symbol.IsNeeded == true ? [new RecordRow("symbol on the front", _symbol.Words, Cell("symbol_artwork"))] : Array.Empty<RecordRow>(),
        .. Texts.Where(text => !_leftOff.ContainsKey(text.Fact)).Select(text => new RecordRow(text.Key, text.Key == "origin" ? OriginWords.Of(_rules, Names.Capital(Said(text.Written)), _language) : text.IsTranslated ? Said(text.Written) : text.Written, text.Source)),
    ];

    private IEnumerable<RecordRow> Grounds =>
    [
        .. _dessert.RulesDay is { } day ? [new RecordRow(LabelRecords.RulesDayKey, day.ToString(LabelAsked.DayFormat, CultureInfo.InvariantCulture), LabelRecords.AskedFor)] : Array.Empty<RecordRow>(),
        .. from key in new[] { "form_of_sale", "food_category", LabelRecords.RulesDayKey, "shelf_days", "portions", "portion_g", "box_mm", "surface_cm2", "face" }
           let all = _dessert.Facts.All(key, _trial)
           where all.Count > 0 && !(key == LabelRecords.RulesDayKey && _dessert.RulesDay is not null)
           // A key that may stand once counts by its first row; faces are as many as there are rows.
           select new RecordRow(key, key == "face" ? string.Join(" | ", all) : all[0], Cell(key)),
        .. Texts.Where(text => _leftOff.ContainsKey(text.Fact)).Select(text => new RecordRow($"given by other means: {text.Key}", text.IsTranslated ? Said(text.Written) : text.Written, _leftOff[text.Fact].Origin.ToString())),
        .. LabelAsked.Exemptions(_dessert, _trial).Select(exemption => new RecordRow($"exemption: {exemption}", "asked for", Cell("exemption"))),
        .. _net.Band is { } band ? [new RecordRow("a pack may be short by", $"{Number((double)_net.ShortfallGrams!)} g", band.Origin.ToString())] : Array.Empty<RecordRow>(),
        .. _date.Form is { } form ? [new RecordRow("how the date is written", form.Rule, form.Origin.ToString())] : Array.Empty<RecordRow>(),
        .. _date.Components.Select(each => new RecordRow($"keeping of {each.Component}", KeepingOf(each), each.Measured is null ? "" : "measured.csv")),
        .. Stated.Select(each => new RecordRow($"why it is stated: {each.Rule.Name}", each.Because, each.Rule.Origin.ToString())),
        .. _statements.Where(each => each.State is ParticularState.Lifted or ParticularState.CannotBeSaid).Select(each =>
            new RecordRow($"not stated: {each.Rule.Name}", each.State == ParticularState.Lifted ? each.Because : $"cannot be said: supply {each.Supply}", each.Rule.Origin.ToString())),
    ];

    private string Said(string words) => _dessert.Words.Said(words, _language) ?? words;

    private string Cell(string key) => _dessert.Facts.OriginOf(key, _trial)?.ToString() ?? "";

    // A model's figure is kept to what it could mean, so that a last digit is no difference.
    private static string KeepingOf(KeepingFigure figure) => string.Join("; ", ((string?[])
    [
        figure.Ratio is { } ratio ? string.Create(CultureInfo.InvariantCulture, $"water activity {ratio:0.000}, {(figure.Measured is null ? "predicted" : "measured")}") : "water activity not known",
        figure.HottestCelsius is { } hottest ? $"hottest step {Number(hottest)} °C" : null,
        figure.MeasuredPh is { } ph ? $"pH {Number(ph)}" : null,
    ]).OfType<string>());

    private static string KeyOf(FrontOfPackScheme scheme, FrontOfPackFigure figure) => $"{scheme.Title}: {figure.Word}";

    private static string FoundOf(FrontOfPackFigure figure) => $"{(figure.Amount is { } amount ? $"{Number(amount)} {figure.Unit}: " : "")}{figure.Given}; {figure.Why}";

    private static string Number(double number) => number.ToString("G10", CultureInfo.InvariantCulture);
}
