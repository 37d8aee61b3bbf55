namespace Tamis.Views;

/// <summary>What a trial gained or lost against its parent.</summary>
/// <param name="Text">In words and figures: <c>bay aroma +1.7</c>.</param>
/// <param name="Finding">What the tasting lets one say of it.</param>
public sealed record Effect(Html Text, Finding Finding);

/// <summary>A trial in the tree of trials.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Change">What was changed against its parent, in words.</param>
public sealed record TrialNode(string Name, Html Change)
{
    /// <summary>Gains and losses against the parent; those that are not shown stand as words.</summary>
    public IReadOnlyList<Effect> Effects { get; init; } = [];

    /// <summary>What else there is to say of it.</summary>
    public Html Said { get; init; }

    /// <summary>Whether it is the trial that the page speaks of.</summary>
    public bool IsChosen { get; init; }

    /// <summary>The trials that were changed from it, in the order in which they were made.</summary>
    public IReadOnlyList<TrialNode> Children { get; init; } = [];
}

/// <summary>Which trial came from which, and what it gained and lost: a nested list that needs no script.</summary>
public static class TrialTree
{
    /// <summary>The tree of one or several first trials.</summary>
    public static Html Of(IReadOnlyList<TrialNode> roots) => Html.Of($"<ul class=\"tree\">{roots.Select(Node)}</ul>\n");

    private static Html Node(TrialNode trial)
    {
        var effects = trial.Effects.Count == 0 ? Html.Empty : Html.Of($"<ul class=\"effects\">{trial.Effects.Select(One)}</ul>");
        var said = trial.Said.IsEmpty ? Html.Empty : Html.Of($"<p class=\"said\">{trial.Said}</p>");
        var kids = trial.Children.Count == 0 ? Html.Empty : Html.Of($"<ul class=\"kids\">{trial.Children.Select(Node)}</ul>");
        var chosen = trial.IsChosen ? Html.Of($" class=\"chosen\"") : Html.Empty;
        return Html.Of($"<li><div{chosen}><b>{trial.Name}</b> <span class=\"did\">{trial.Change}</span>{effects}{said}</div>{kids}</li>\n");
    }

    private static Html One(Effect effect)
    {
        var kind = effect.Finding switch { Finding.Gain => "up", Finding.Loss => "down", _ => "flat" };
        return Html.Of($"<li class=\"{kind}\">{effect.Text}</li>");
    }
}
