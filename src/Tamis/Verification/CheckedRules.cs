using System.Collections.Concurrent;
using Tamis.Labels;

namespace Tamis.Verification;

/// <summary>The rule sets that checks are about: those that the kit ships, each read once.</summary>
internal static class CheckedRules
{
    private static readonly ConcurrentDictionary<string, RuleSet> Read = new(Names.Comparer);

    /// <summary>The rule set that a check names as <c>rule_set</c>.</summary>
    /// <exception cref="KeyNotFoundException">There is none of this name; the message names the nearest.</exception>
    public static RuleSet Of(CheckInputs inputs) => Named(inputs.Text("rule_set"));

    /// <summary>A rule set by its folder's name.</summary>
    /// <inheritdoc cref="Of"/>
    public static RuleSet Named(string name) => Read.GetOrAdd(name, each => RuleSets.Load(KitFolder.Data("rules"), each));
}
