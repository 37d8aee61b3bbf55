namespace Tamis.Labels;

/// <summary>Prints a list of ingredients as runs of text.</summary>
internal sealed class ListPrinter(ListRules rules, AllergenRules allergens, LabelWords words, string language, List<ListProblem> problems)
{
    public string Heading => Names.Capital(Lawful(rules.Heading));

    public IReadOnlyList<TextRun> List(IReadOnlyList<ListedItem> items)
    {
        List<TextRun> runs = [.. Title(Heading, rules.HasBoldTitles)];
        Items(items, runs, isWithin: false);
        runs.Add(new(".", false));
        return Joined(runs);
    }

    /// <summary>What the food contains: its title and its entries are set as the law wants those of the list, or its title stands out as its names do; where the law wants a kind and the list names some, those.</summary>
    public IReadOnlyList<TextRun> Contains(IReadOnlyList<AllergenRule> named, ILookup<AllergenRule, string> kinds) =>
        Statement("contains", rules.HasBoldTitles || rules.Contains == ContainsStatement.Emphasised, rules.HasCapitals, named, rule => kinds.Contains(rule) ? [.. kinds[rule]] : allergens.Summarise(rule, language));

    /// <summary>What may have got in: it begins a line of its own, for which no law asks for bold type.</summary>
    public IReadOnlyList<TextRun> MayContain(IReadOnlyList<AllergenRule> named) =>
        Statement("may contain", isBold: false, hasCapitals: false, named, rule => allergens.Print(rule, language) is { } printed ? [printed] : null);

    private IReadOnlyList<TextRun> Statement(string word, bool isBold, bool hasCapitals, IReadOnlyList<AllergenRule> named, Func<AllergenRule, IReadOnlyList<string>?> printed)
    {
        if (named.Count == 0) return [];
        List<string> names = [];
        foreach (var rule in named)
        {
            if (printed(rule) is { } own) names.AddRange(own);
            else problems.Add(new($"there is no word for {rule.Substance} in the language '{language}'", $"a term in {AllergenWords.File}", null));
        }
        List<TextRun> runs = [.. Title(Names.Capital(Lawful(word)), isBold)];
        foreach (var (at, name) in names.Distinct(Names.Comparer).Index())
        {
            if (at > 0) runs.Add(new(", ", false));
            runs.Add(new(hasCapitals ? Names.Capital(name) : name, rules.Allergens == AllergensInList.Emphasised));
        }
        runs.Add(new(".", false));
        return Joined(runs);
    }

    // A name that holds several additives is that of several ingredients.
    private static string Capitals(ListedItem item) => item.Count == 1 ? Names.Capital(item.Printed) : string.Join(", ", item.Printed.Split(", ").Select(Names.Capital));

    private TextRun[] Title(string title, bool isBold) => [new(words.Colon(title, language), isBold), new(" ", false)];

    private void Items(IReadOnlyList<ListedItem> items, List<TextRun> runs, bool isWithin)
    {
        for (var at = 0; at < items.Count; at++)
        {
            var item = items[at];
            var goesOn = at > 0 && item.Class is not null && item.Class == items[at - 1].Class;
            // A semicolon ends a class, so that the next ingredient is not taken for one more of its additives.
            if (at > 0) runs.Add(new(items[at - 1].Class is not null && !goesOn ? "; " : ", ", false));
            if (item.Class is { } named && !goesOn)
                runs.Add(new($"{words.Colon(ClassOf(named, items.Skip(at).TakeWhile(next => next.Class == named).Sum(next => next.Count) > 1), language)} ", false));
            Emphasised(item, rules.HasCapitals && !isWithin ? Capitals(item) : item.Printed, runs);
            if (item.Quantity is { } quantity) runs.Add(new($" {quantity}", false));
            if (item.Parts.Count > 0)
            {
                runs.Add(new(" (", false));
                Items(item.Parts, runs, isWithin: true);
                runs.Add(new(")", false));
            }
            if (item.NamedSources.Count == 0) continue;
            runs.Add(new(" (", false));
            for (var source = 0; source < item.NamedSources.Count; source++)
            {
                if (source > 0) runs.Add(new(", ", false));
                runs.Add(new(item.NamedSources[source], rules.Allergens == AllergensInList.Emphasised));
            }
            runs.Add(new(")", false));
        }
    }

    private void Emphasised(ListedItem item, string printed, List<TextRun> runs)
    {
        var at = 0;
        foreach (var span in rules.Allergens == AllergensInList.Emphasised ? allergens.Named(printed, language).Where(span => item.Substances.Contains(span.Substance)) : [])
        {
            runs.Add(new(printed[at..span.Start], false));
            runs.Add(new(printed.Substring(span.Start, span.Length), true));
            at = span.Start + span.Length;
        }
        runs.Add(new(printed[at..], false));
    }

    private static IReadOnlyList<TextRun> Joined(IEnumerable<TextRun> runs)
    {
        List<TextRun> joined = [];
        foreach (var run in runs.Where(run => run.Text.Length > 0))
        {
            if (joined.Count > 0 && joined[^1].IsEmphasised == run.IsEmphasised) joined[^1] = joined[^1] with { Text = joined[^1].Text + run.Text };
            else joined.Add(run);
        }
        return joined;
    }

    private string ClassOf(string singular, bool isPlural) =>
        Lawful(isPlural ? words.PluralOf(singular) : singular);

    /// <summary>A word that the law prescribes, in the language of the label; in brackets and a problem where there is no term.</summary>
    public string Lawful(string word)
    {
        if (words.In(word, language) is { } term) return term;
        problems.Add(new($"there is no word for '{word}' in the language '{language}'", "a term in data/rules/words.csv", null));
        return $"[{word}]";
    }
}
