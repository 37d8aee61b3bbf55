namespace Tamis.Labels;

/// <summary>Prints a list of ingredients as runs of text.</summary>
internal sealed class ListPrinter(ListRules rules, AllergenRules allergens, LabelWords words, string language, List<ListProblem> problems)
{
    public string Heading => Names.Capital(Lawful(rules.Heading));

    public IReadOnlyList<TextRun> List(IReadOnlyList<ListedItem> items)
    {
        List<TextRun> runs = [new($"{Heading}: ", false)];
        Items(items, runs);
        runs.Add(new(".", false));
        return Joined(runs);
    }

    public IReadOnlyList<TextRun> Statement(string word, IReadOnlyList<AllergenRule> named)
    {
        if (named.Count == 0) return [];
        var isEmphasised = rules.Allergens == AllergensInList.Emphasised;
        List<TextRun> runs = [new($"{Names.Capital(Lawful(word))}: ", false)];
        foreach (var rule in named)
        {
            if (runs.Count > 1) runs.Add(new(", ", false));
            if (allergens.Print(rule, language) is { } printed) runs.Add(new(printed, isEmphasised));
            else problems.Add(new($"there is no word for {rule.Substance} in the language '{language}'", $"a term in {AllergenWords.File}", null));
        }
        runs.Add(new(".", false));
        return Joined(runs);
    }

    private void Items(IReadOnlyList<ListedItem> items, List<TextRun> runs)
    {
        for (var at = 0; at < items.Count; at++)
        {
            var item = items[at];
            var goesOn = at > 0 && item.Class is not null && item.Class == items[at - 1].Class;
            // A semicolon ends a class, so that the next ingredient is not taken for one more of its additives.
            if (at > 0) runs.Add(new(items[at - 1].Class is not null && !goesOn ? "; " : ", ", false));
            if (item.Class is { } named && !goesOn)
                runs.Add(new($"{ClassOf(named, items.Skip(at).TakeWhile(next => next.Class == named).Sum(next => next.Count) > 1)}: ", false));
            Emphasised(item, runs);
            if (item.Quantity is { } quantity) runs.Add(new($" {quantity}", false));
            if (item.Parts.Count > 0)
            {
                runs.Add(new(" (", false));
                Items(item.Parts, runs);
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

    private void Emphasised(ListedItem item, List<TextRun> runs)
    {
        var at = 0;
        foreach (var span in rules.Allergens == AllergensInList.Emphasised ? allergens.Words.Find(item.Printed, language).Where(span => item.Substances.Contains(span.Substance)) : [])
        {
            runs.Add(new(item.Printed[at..span.Start], false));
            runs.Add(new(item.Printed.Substring(span.Start, span.Length), true));
            at = span.Start + span.Length;
        }
        runs.Add(new(item.Printed[at..], false));
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
