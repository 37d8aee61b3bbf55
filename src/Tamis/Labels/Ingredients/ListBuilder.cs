using System.Globalization;
using Tamis.Formulas;

namespace Tamis.Labels;

/// <summary>Draws up a list of ingredients.</summary>
internal sealed class ListBuilder(RuleSet rules, string language, ListWishes wishes, double finishedGrams, double waterLostGrams)
{
    private const string Water = "water";

    // What a draft shows where a list is missing, so that no compound looks like a single food; nothing of it is ever released.
    private const string NotStated = "[its own list]";

    private readonly ListRules _list = ListRules.Of(rules);
    private readonly AllergenRules _allergens = AllergenRules.Of(rules);
    private readonly CompoundRules _compounds = CompoundRules.Of(rules);
    private readonly Additives _additives = Additives.Of(rules);
    private readonly LabelWords _words = LabelWords.Of(rules.Folder);
    private readonly PanelTerms _terms = PanelTerms.Of(rules);
    private readonly List<ListProblem> _problems = [];
    private readonly List<ListReason> _remarks = [];
    private readonly Dictionary<string, double> _gramsOfKind = new(Names.Comparer);
    private double _sulphitesMgPerKg;

    public IngredientDeclaration Build(IReadOnlyList<ListedUse> uses)
    {
        ListedUse[] used = [.. uses.Where(use => use.MassGrams > 0)];
        foreach (var left in uses.Where(use => use.MassGrams <= 0).Select(use => use.Ingredient.Name).Distinct(Names.Comparer).Except(used.Select(use => use.Ingredient.Name), Names.Comparer))
            _remarks.Add(new($"{left} was taken out again and is not listed; what it gave off is for a competent person to judge.", null) { IsOpen = true });
        Lookout(used);
        foreach (var same in used.GroupBy(use => use.Ingredient.Compound?.Kind ?? "", Names.Comparer)) _gramsOfKind[same.Key] = same.Sum(use => use.MassGrams);
        _sulphitesMgPerKg = used.Sum(use => (use.Ingredient.SulphitesMgPerKg ?? 0) * use.MassGrams) / finishedGrams;
        ListPrinter printer = new(_list, _allergens, _words, language, _problems);
        var items = Grouped(InOrder(Level(used, 0)), printer);
        string[] unfound = _list.HasQuantities ? [.. wishes.Dwelt.Where(word => !All(items).Any(item => item.MassGrams is not null && Names.HoldsInEitherNumber(item.Name, word)))] : [];
        foreach (var word in unfound)
            _problems.Add(new($"the pack dwells on '{word}', and no ingredient of the list is called so: its quantity would be left off", "the name as it stands in the list, or the trials that it is for (key emphasis of dessert.csv)", null));
        string[] unmet = _list.HasQuantities ? [.. wishes.Emphasised.Except(wishes.Dwelt, Names.Comparer).Except(wishes.Explained, Names.Comparer).Where(word => !All(items).Any(item => Names.HoldsInEitherNumber(item.Name, word))).Distinct(Names.Comparer)] : [];
        if (unmet.Length > 0)
            _remarks.Add(new($"Of the name, no ingredient is called {string.Join(", ", unmet)}: where such a word speaks of an ingredient, its quantity belongs in the list; a row emphasis in dessert.csv asks for it, with the word before a colon and the ingredients behind it.", null) { IsOpen = true });
        AllergenRule[] contains = [.. _allergens.All.Where(rule => All(items).Any(item => item.Substances.Contains(rule.Substance)))];
        var kinds = (from rule in contains where rule.IsByKind from kind in KindsIn(rule, items) select (rule, kind)).ToLookup(each => each.rule, each => each.kind);
        AllergenRule[] mayContain = [.. MayContain(used).Where(rule => !contains.Contains(rule))];
        List<ListProblem> withoutList = [];
        return new()
        {
            InPlaceOfList = _list.HasContainsStatement ? [] : new ListPrinter(_list, _allergens, _words, language, withoutList).Contains(contains, kinds),
            InPlaceOfListProblems = withoutList,
            Heading = printer.Heading,
            Language = language,
            FinishedGrams = finishedGrams,
            Items = items,
            Runs = printer.List(items),
            ContainsStatement = _list.HasContainsStatement ? printer.Contains(contains, kinds) : [],
            MayContainStatement = printer.MayContain(mayContain),
            Contains = contains,
            MayContain = mayContain,
            Unmet = unfound,
            Problems = [.. _problems.Distinct()],
            Remarks = [.. _remarks.Distinct()],
        };
    }

    private static IEnumerable<ListedItem> All(IEnumerable<ListedItem> items) => items.SelectMany(item => All(item.Parts).Prepend(item));

    private void Lookout(ListedUse[] used)
    {
        foreach (var ingredient in used.Select(use => use.Ingredient).DistinctBy(each => each.Name, Names.Comparer))
        {
            if (ingredient.Allergens is null)
                _problems.Add(new($"nobody has written down the allergens of {ingredient.Name}", "fill allergens in ingredients.csv or in the newest document, 'none' where somebody looked and there are none", ingredient.Origin));
            foreach (var word in (ingredient.Allergens ?? []).Concat(ingredient.MayContain ?? []).Where(word => _allergens.Words.SubstanceOf(word) is null))
                _problems.Add(new($"'{word}' of {ingredient.Name} is no allergen that the kit knows", $"one of {AllergenWords.File}, such as {string.Join(" or ", Names.Nearest(word, _allergens.Words.Substances))}", ingredient.Origin));
            if (ingredient.LabelName is null)
                _problems.Add(new($"{ingredient.Name} has no name for a label", "fill label_name in ingredients.csv, or legal_name in its document", ingredient.Origin));
        }
    }

    // The items of one list: what stands in it itself, and the components in brackets.
    private List<ListedItem> Level(IReadOnlyList<ListedUse> uses, int depth)
    {
        var own = uses.Where(use => use.Brackets.Count == depth).GroupBy(use => NameOf(use.Ingredient), Names.Comparer).SelectMany(SameLists);
        var inner = uses.Where(use => use.Brackets.Count > depth).GroupBy(use => use.Brackets[depth], Names.Comparer).Select(same => new ListedItem
        {
            Name = same.Key,
            Printed = Said(same.Key, null),
            MassGrams = same.Sum(use => use.MassGrams),
            Parts = InOrder(Level([.. same], depth + 1)),
            Reasons = [new($"named with its own bracket, as components.csv asks: {Grams(same.Sum(use => use.MassGrams))}", null)],
        });
        return [.. own.Concat(inner).Select(item => item.MassGrams is null ? item : item with { Quantity = QuantityOf(item) })];
    }

    private static string NameOf(Ingredient ingredient) => ingredient.LabelName ?? ingredient.Name;

    // Two ingredients of one name stand together where their packs list the same: of another list nothing may be left off.
    private IEnumerable<ListedItem> SameLists(IEnumerable<ListedUse> named)
    {
        var byList = named.GroupBy(use => ListKey(use.Ingredient)).Select(same => same.ToArray()).ToArray();
        if (byList.Length > 1)
            _remarks.Add(new($"{string.Join(" and ", byList.Select(each => each[0].Ingredient.Name))} have one name on a label and not the same list of their own: they stand apart.", null));
        return byList.SelectMany(ItemsOf);
    }

    private string ListKey(Ingredient ingredient)
    {
        var parts = Written(ingredient);
        if (parts.Count > 0 && !IsItsNameAlone(parts, ingredient)) return SupplierList.KeyOf(parts);
        // A compound whose list is missing never hides behind one of the same name that has none to give.
        return parts.Count == 0 && _compounds.WhyCompound(ingredient.Compound) is not null ? $"? {Names.Key(ingredient.AdditiveList ?? "?")}" : "";
    }

    private IReadOnlyList<SupplierPart> Written(Ingredient ingredient) => ingredient.SupplierList is { } text ? SupplierList.Unwrapped(SupplierList.Read(text, _additives, _words, []), NameOf(ingredient)) : [];

    // Its name on the label and nothing else, in a list of its own: whoever supplied it says that it is a single food.
    private static bool IsItsNameAlone(IReadOnlyList<SupplierPart> parts, Ingredient ingredient) => parts is [{ Parts: [] } only] && Names.Same(only.Name, NameOf(ingredient));

    private IEnumerable<ListedItem> ItemsOf(IReadOnlyList<ListedUse> uses)
    {
        // Where the packs of several list the same in another order, the one that most is used of gives it.
        var ingredient = uses.GroupBy(use => use.Ingredient.Name, Names.Comparer).MaxBy(same => same.Sum(use => use.MassGrams))!.First().Ingredient;
        var used = uses.Sum(use => use.MassGrams);
        var (mass, reason) = Names.Same(NameOf(ingredient), Water) && _list.WaterByFinishedMass ? WaterLeft(used) : (used, $"placed by the {Grams(used)} used");
        if (mass is not { } placed) yield break;
        var sources = uses.Select(use => use.Ingredient).DistinctBy(each => each.Name, Names.Comparer).ToArray();
        var substances = sources.SelectMany(SubstancesOf).Distinct().ToArray();
        ListedItem item = new()
        {
            Name = NameOf(ingredient),
            Printed = "",
            MassGrams = placed,
            Substances = substances,
            Reasons = [new(reason, null), .. sources.Length > 1 ? [new ListReason($"{string.Join(" and ", sources.Select(each => each.Name))} have one name on a label", null)] : Array.Empty<ListReason>()],
            Origins = [.. uses.Select(use => use.Origin).Distinct()],
        };
        // Each is looked at by itself: two of one name may differ in what is stated of them.
        foreach (var other in sources.Where(other => !ReferenceEquals(other, ingredient))) PartsOf(other);
        foreach (var made in ingredient.AdditiveNumbers.Count > 0 ? AdditiveItems(item, ingredient) : [CompoundOrPlain(item, ingredient, sources)]) yield return Named(made);
    }

    // Added water is what the finished food weighs beyond all other ingredients that were used.
    private (double? Mass, string Reason) WaterLeft(double used)
    {
        var left = Math.Max(0, used - waterLostGrams);
        var share = left / finishedGrams * 100;
        var origin = _list.Origins["water_limit_percent"];
        var words = $"of {Grams(used)} added water {Grams(left)} are left, {share.ToString("0.0", CultureInfo.InvariantCulture)} % of the finished food";
        if (_list.ListsWater(share)) return (left, words);
        _remarks.Add(new($"Water is left off: {words}, and the law lets {(_list.WaterLimitIncluded ? "up to" : "less than")} {_list.WaterLimitPercent.ToString(CultureInfo.InvariantCulture)} % go unnamed.", origin));
        return (null, words);
    }

    private IEnumerable<ListedItem> AdditiveItems(ListedItem item, Ingredient ingredient)
    {
        string[] names = [.. NameOf(ingredient).Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)];
        foreach (var number in ingredient.AdditiveNumbers.Where(number => _additives.Find(number) is null))
            _problems.Add(new($"{number} of {ingredient.Name} is no additive that the kit knows", "a number of data/rules/additives.csv, or a row more there with its source", ingredient.Origin));
        if (_list.HasAdditiveClass && (ingredient.Function is not { } function || _words.ClassOf(function) is null))
            _problems.Add(new($"{ingredient.Name} is an additive without a class that the law knows", $"fill function in ingredients.csv{(ingredient.Function is { } word ? $" ('{word}' is none{Near(word)})" : "")}", ingredient.Origin));
        var additiveClass = ingredient.Function is { } written ? _words.ClassOf(written)?.Class : null;
        yield return item with
        {
            Printed = string.Join(", ", names.Select((name, index) => Called(name, ingredient, index))),
            Class = _list.HasAdditiveClass ? additiveClass : null,
            Count = names.Length,
            Reasons = [.. item.Reasons, new("an additive: class and name, or name alone, as the law has it", _list.Origins["additive_class"])],
        };
        // What the pack of a mixture of additives lists beside them, such as the starch of a baking powder.
        var parts = PartsOf(ingredient);
        if (parts.Count == 0 && _compounds.WhyCompound(ingredient.Compound) is { } why && LeaveOf(item, ingredient) is null)
        {
            ListMissing(ingredient, why);
            yield return new() { Name = NotStated, Printed = NotStated, MassGrams = item.MassGrams, Reasons = [new($"what else is in {ingredient.Name} is not stated", null)], Origins = item.Origins };
        }
        foreach (var other in parts.Where(part => _additives.Find(part.Name) is null && !names.Contains(part.Name, Names.Comparer)))
            yield return new()
            {
                Name = other.Name,
                Printed = Said(other.Name, ingredient.Origin),
                MassGrams = item.MassGrams,
                Reasons = [new($"in {ingredient.Name} by its own pack, which does not say how much: placed by all of the {Grams(item.MassGrams!.Value)}", null)],
                Origins = item.Origins,
            };
    }

    private string Called(string name, Ingredient ingredient, int index)
    {
        if (!wishes.Numbers || _list.Numbering == AdditiveNumbering.None || index >= ingredient.AdditiveNumbers.Count) return Said(name, ingredient.Origin);
        return Numbered(ingredient.AdditiveNumbers[index]);
    }

    private string Numbered(string number) => _list.Numbering switch
    {
        AdditiveNumbering.Bare => number[2..],
        AdditiveNumbering.Ins => $"INS\u00a0{number[2..]}",
        _ => number.Replace(' ', '\u00a0'),
    };

    private ListedItem CompoundOrPlain(ListedItem item, Ingredient ingredient, IReadOnlyList<Ingredient> sources)
    {
        var printed = item with { Printed = Said(item.Name, ingredient.Origin) };
        var parts = PartsOf(ingredient);
        if (parts.Count == 0 && _compounds.WhyCompound(ingredient.Compound) is not null) return WithoutList(printed, ingredient, sources);
        // What is bought with a document of its own and is no food of a table may be a compound: what is in it is not guessed.
        foreach (var source in sources.Where(each => each is { Supplier: not null, Food: null } && Written(each).Count == 0))
            _problems.Add(new($"{source.Name} comes with a document of {source.Supplier} that has no list of its own: whether it is a compound, and of what, is not known", "ingredient_list in its document; its name alone where it is a single food", source.Origin) { ListOf = source.Name });
        if (parts.Count == 0) return printed;
        if (IsItsNameAlone(parts, ingredient))
        {
            foreach (var source in sources.Where(each => each is { SupplierList: not null, Compound.IsCompound: true }))
                _remarks.Add(new($"{source.Name} is taken for a single food, as its list says; foods of its kind ({source.Compound!.Kind}) are compounds.", null));
            return printed;
        }
        var leave = LeaveOf(item, ingredient);
        if (!wishes.Summarises || leave is null)
            return printed with
            {
                Parts = [.. parts.Select(part => PartItem(part, ingredient, item.Substances))],
                Reasons = [.. item.Reasons, new(leave is not null ? "opened; the law would let it stand without its own list" : "a compound: its own list stands in brackets", leave?.Origin ?? _list.Origins["compound_limit_percent"])],
            };
        return Closed(printed, ingredient, leave, leave.NamesAdditives ? AdditivesOf(parts) : []);
    }

    // A compound that nobody has listed is never taken for a single food: either the law asks for no list of it, or the label waits for one.
    private ListedItem WithoutList(ListedItem printed, Ingredient ingredient, IReadOnlyList<Ingredient> sources)
    {
        var leave = LeaveOf(printed, ingredient);
        if (leave is not null && (!leave.NamesAdditives || ingredient.AdditiveList is not null))
            return Closed(printed, ingredient, leave, leave.NamesAdditives ? StatedAdditives(ingredient) : []);
        foreach (var source in sources)
        {
            if (_compounds.WhyCompound(source.Compound) is not { } why) continue;
            if (leave is null) ListMissing(source, why);
            else
                _problems.Add(new($"{source.Name} is a compound ({why}), {Share(printed)} of the finished food: the law lets it stand without its own list but for its additives ({leave.Origin}), and nobody has stated them",
                    "additives in its document or in ingredients.csv, 'none' where its pack names none; or its whole list under ingredient_list", source.Origin) { ListOf = source.Name });
        }
        return printed with
        {
            Parts = [new() { Name = NotStated, Printed = NotStated }],
            Reasons = [.. printed.Reasons, new("a compound whose own list nobody has stated", leave?.Origin ?? _list.Origins["compound_limit_percent"])],
        };
    }

    // What is named of a compound that stands closed: its additives, however deep in its list they stand.
    private IEnumerable<SupplierPart> AdditivesOf(IReadOnlyList<SupplierPart> parts) =>
        parts.SelectMany(part => part.Class is not null || _additives.Find(part.Name) is not null ? [part] : AdditivesOf(part.Parts));

    private IReadOnlyList<SupplierPart> StatedAdditives(Ingredient ingredient)
    {
        if (ingredient.AdditiveList is not { Length: > 0 } text) return [];
        var stated = Read(text, ingredient);
        foreach (var part in _list.HasAdditiveClass ? stated.Where(part => part.Class is null && _additives.Find(part.Name) is not null) : [])
            _problems.Add(new($"'{part.Name}' among the additives of {ingredient.Name} stands without its class", "the class before it, as the pack has it: emulsifier: lecithins", ingredient.Origin));
        return stated;
    }

    private void ListMissing(Ingredient ingredient, string why) => _problems.Add(new($"{ingredient.Name} is a compound ({why}) and has no list of its own",
        $"ingredient_list of the supplier’s specification, in its document or in ingredients.csv; its name on the label alone ('{NameOf(ingredient)}') where the document says that it is a single food", ingredient.Origin) { ListOf = ingredient.Name });

    private ListedItem Closed(ListedItem printed, Ingredient ingredient, CompoundLeave leave, IEnumerable<SupplierPart> additives)
    {
        // What the leave hangs on, such as a standard that the compound must meet, is for a person to judge.
        if (leave.Origin.Note.Length > 0) _remarks.Add(new($"{ingredient.Name} stands without its own list: {leave.Origin.Note}.", leave.Origin));
        return printed with
        {
            Parts = [.. additives.Select(part => PartItem(part, ingredient, printed.Substances))],
            Reasons = [.. printed.Reasons, new($"{Share(printed)} of the finished food: stands without its own list, but for {(leave.NamesAdditives ? "additives and allergens" : "allergens")}", leave.Origin)],
        };
    }

    private CompoundLeave? LeaveOf(ListedItem item, Ingredient ingredient)
    {
        var kind = ingredient.Compound?.Kind ?? "";
        var together = _compounds.CountedWith(kind);
        return _compounds.LeaveOf(_list, item.Name, kind, item.MassGrams!.Value / finishedGrams * 100,
            together.Count == 0 ? null : together.Sum(each => _gramsOfKind.GetValueOrDefault(each)) / finishedGrams * 100);
    }

    private string Share(ListedItem item) => $"{(item.MassGrams!.Value / finishedGrams * 100).ToString("0.0", CultureInfo.InvariantCulture)} %";

    private ListedItem PartItem(SupplierPart part, Ingredient ingredient, IReadOnlyList<string> counting) => new()
    {
        Name = part.Name,
        Printed = PartName(part, ingredient),
        Quantity = part.Percent is { } percent ? _terms.Marked($"{percent.ToString("0.##", CultureInfo.InvariantCulture)}\u00a0%", language) : null,
        Class = _list.HasAdditiveClass ? part.Class : null,
        Parts = [.. part.Parts.Select(inner => PartItem(inner, ingredient, counting))],
        Substances = [.. _allergens.Words.Find(part.Name, "en").Select(span => span.Substance).Where(counting.Contains).Distinct()],
    };

    private string PartName(SupplierPart part, Ingredient ingredient)
    {
        var isNumber = _additives.Find(part.Name) is { } additive && Names.Same(additive.Number, part.Name);
        // A number is a name in every language; a law without numbers wants the name.
        return !isNumber ? Said(part.Name, ingredient.Origin) : _list.Numbering == AdditiveNumbering.None ? Said(_additives.Find(part.Name)!.Name, ingredient.Origin) : Numbered(_additives.Find(part.Name)!.Number);
    }

    private IReadOnlyList<SupplierPart> PartsOf(Ingredient ingredient) => ingredient.SupplierList is { } text ? SupplierList.Unwrapped(Read(text, ingredient), NameOf(ingredient)) : [];

    private IReadOnlyList<SupplierPart> Read(string text, Ingredient ingredient)
    {
        List<string> unknown = [];
        var parts = SupplierList.Read(text, _additives, _words, unknown);
        foreach (var name in unknown)
            _problems.Add(new($"'{name}' in the list of {ingredient.Name} stands behind a class and is no additive that the kit knows", "its number, or a row more in data/rules/additives.csv with its source", ingredient.Origin));
        foreach (var span in _allergens.Words.Find(text, "en").Where(span => ingredient.Allergens is { } stated && !stated.Any(word => _allergens.Words.SubstanceOf(word) == span.Substance)).DistinctBy(span => span.Substance))
            if (_allergens.For(span.Substance) is { ThresholdMgPerKg: null })
                _problems.Add(new($"the list of {ingredient.Name} names {span.Substance} and its allergens do not", "look at the document and mend allergens in its row", ingredient.Origin));
        return parts;
    }

    // An allergen that none of the printed names shows stands in brackets behind the item.
    private ListedItem Named(ListedItem item)
    {
        var shown = All([item]).SelectMany(each => _allergens.Named(each.Printed, language).Select(span => span.Substance)).ToHashSet();
        List<string> sources = [];
        foreach (var rule in _allergens.All.Where(rule => rule.IsByKind && item.Substances.Contains(rule.Substance) && !KindsIn(rule, [item]).Any()))
            _problems.Add(new($"the law wants {rule.Group} named by its kind, and the name of {item.Name} does not say which", $"the kind in its name on the label, such as 'fish gelatine (cod)', or a row more in data/rules/{AllergenRules.KindsFile}", item.Origins.FirstOrDefault()));
        foreach (var substance in item.Substances.Where(substance => !shown.Contains(substance)))
        {
            var rule = _allergens.All.First(rule => rule.Substance == substance);
            if (rule.IsByKind && KindsIn(rule, [item]).Any()) continue;
            if (_allergens.Print(rule, language) is { } printed) sources.Add(printed);
            else _problems.Add(new($"there is no word for {substance} in the language '{language}'", $"a term in {AllergenWords.File}", null));
        }
        return item with { NamedSources = [.. sources.Distinct(Names.Comparer)] };
    }

    private IEnumerable<string> KindsIn(AllergenRule rule, IEnumerable<ListedItem> items) =>
        All(items).SelectMany(item => _allergens.KindsIn(rule, item.Printed, language)).Distinct(Names.Comparer);

    private IEnumerable<string> SubstancesOf(Ingredient ingredient)
    {
        foreach (var word in ingredient.Allergens ?? [])
        {
            if (_allergens.Words.SubstanceOf(word) is not { } substance) continue;
            if (_allergens.For(word) is not { } rule)
                _remarks.Add(new($"{substance} of {ingredient.Name} is on no list of this law and is not emphasised.", null));
            else if (rule.ExemptIn(NameOf(ingredient)) is { } exempt)
                _remarks.Add(new($"{substance} of {ingredient.Name} need not be named: {exempt} is exempt.", rule.Origin));
            else if (rule.ThresholdMgPerKg is not null && ingredient.SulphitesMgPerKg is null)
            {
                _problems.Add(new($"how much sulphite is in {ingredient.Name} is not known", "sulphites_mg_kg in its document; until then it is named", ingredient.Origin));
                yield return substance;
            }
            else if (!rule.Counts(_sulphitesMgPerKg))
                _remarks.Add(new($"{rule.Group}: {_sulphitesMgPerKg.ToString("0.0", CultureInfo.InvariantCulture)} mg/kg in the finished food, under the limit of {rule.ThresholdMgPerKg!.Value.ToString(CultureInfo.InvariantCulture)}; not named as an allergen. What the oven drives off is not taken away.", rule.Origin));
            else yield return substance;
        }
    }

    private IEnumerable<AllergenRule> MayContain(IEnumerable<ListedUse> used)
    {
        string[] words = [.. used.SelectMany(use => use.Ingredient.MayContain ?? []).Concat(wishes.CrossContact).Distinct(Names.Comparer)];
        foreach (var word in wishes.CrossContact.Where(word => _allergens.Words.SubstanceOf(word) is null))
            _problems.Add(new($"'{word}' of the workshop’s cross-contact is no allergen that the kit knows", $"one of {AllergenWords.File}, such as {string.Join(" or ", Names.Nearest(word, _allergens.Words.Substances))}", null));
        return _allergens.All.Where(rule => words.Any(word => _allergens.Words.SubstanceOf(word) == rule.Substance));
    }

    private string? QuantityOf(ListedItem item)
    {
        if (!_list.HasQuantities || !wishes.Emphasised.Any(word => Names.HoldsInEitherNumber(item.Name, word))) return null;
        return _terms.Marked(_list.Quantity(item.MassGrams!.Value, finishedGrams), language);
    }

    private List<ListedItem> Grouped(List<ListedItem> items, ListPrinter printer)
    {
        ListedItem[] sugars = [.. items.Where(item => _list.GroupedSugars.Contains(item.Name, Names.Comparer))];
        if (sugars.Length == 0) return items;
        ListedItem group = new()
        {
            Name = "sugars",
            Printed = printer.Lawful("sugars"),
            MassGrams = sugars.Sum(item => item.MassGrams),
            Parts = InOrder([.. sugars]),
            Reasons = [new("sugars-based ingredients stand together, by the mass of all of them", _list.Origins["group_sugars"])],
        };
        return InOrder([.. items.Except(sugars), group]);
    }

    // Where two weigh the same the order of the sheet stays.
    private static List<ListedItem> InOrder(IReadOnlyList<ListedItem> items) => [.. items.OrderByDescending(item => item.MassGrams)];

    // A word of the kitchen's in the language of the label; the kit's own word where it has one.
    private string Said(string word, Source? origin)
    {
        if (Names.Same(language, "en")) return word;
        if ((wishes.Translate(word, language) ?? _words.In(word, language)) is { } term) return term;
        _problems.Add(new($"there is no word for '{word}' in the language '{language}'", $"a term in the column {language} of the store’s words.csv", origin));
        return $"[{word}]";
    }

    private string Near(string word) => Names.Nearest(word, _words.All) is [var near, ..] ? $"; is it '{near}'?" : "";

    private static string Grams(double grams) => $"{grams.ToString(grams < 10 ? "0.0" : "0", CultureInfo.InvariantCulture)}\u202fg";
}
