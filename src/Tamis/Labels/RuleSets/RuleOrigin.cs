namespace Tamis.Labels;

/// <summary>What binds a maker to a rule, strongest first.</summary>
public enum RuleStrength
{
    /// <summary>A legal text.</summary>
    Law,
    /// <summary>Official guidance without legal force.</summary>
    Guidance,
    /// <summary>Law and guidance are silent; this is how the trade does it.</summary>
    Convention,
    /// <summary>A choice of this kit or of the kitchen, to be changed in the rule file.</summary>
    Policy,
}

/// <summary>Where one row of a rule set came from, and whether anybody read it there.</summary>
/// <param name="Act">The act, guidance or practice.</param>
/// <param name="Locator">The article or section; may be empty.</param>
/// <param name="Strength">What binds a maker to it.</param>
/// <param name="IsFromMemory">Whether the row was written from memory, with no text at hand.</param>
/// <param name="Note">What a reader of the row should know; may be empty.</param>
public sealed record RuleOrigin(string Act, string Locator, RuleStrength Strength, bool IsFromMemory, string Note = "")
{
    /// <summary>The rule as the source of a figure.</summary>
    public Source Source => new(Act, IsFromMemory ? Evidence.Memory : Strength switch
    {
        RuleStrength.Law => Evidence.Law,
        RuleStrength.Guidance => Evidence.Guidance,
        _ => Evidence.Practice,
    }, Locator);

    /// <summary>The strength in a word, with the doubt where there is one: <c>guidance, from memory</c>.</summary>
    public string StrengthInWords => Strength switch
    {
        RuleStrength.Law => "law",
        RuleStrength.Guidance => "guidance",
        RuleStrength.Convention => "convention",
        _ => "policy",
    } + (IsFromMemory ? ", from memory" : "");

    /// <summary>The origin as a reader reads it.</summary>
    public override string ToString() => $"{Source} ({StrengthInWords})";
}
