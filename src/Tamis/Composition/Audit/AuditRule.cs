namespace Tamis.Composition;

/// <summary>What an audit rule compares.</summary>
public enum AuditKind
{
    /// <summary>A sum lies between two limits.</summary>
    Between,
    /// <summary>A part is not more than its whole.</summary>
    Within,
    /// <summary>The parts that are known make up enough of their whole.</summary>
    AtLeast,
    /// <summary>Two ways to the same figure agree.</summary>
    Near,
    /// <summary>The energy of the record agrees with the record's own factors.</summary>
    OwnFactors,
    /// <summary>A content lies where those of its food group lie.</summary>
    Outlier,
    /// <summary>A content is not a tenth, ten, a hundred or a thousand times what its food group has.</summary>
    Tens,
    /// <summary>A mean lies between its lowest and its highest sample.</summary>
    Samples,
}

/// <summary>How much a finding weighs.</summary>
public enum AuditSeverity
{
    /// <summary>Possible, but unusual: worth a look.</summary>
    Look,
    /// <summary>Outside the published limits: to be found in the record or mended.</summary>
    Doubtful,
    /// <summary>It cannot be so.</summary>
    Wrong,
}

/// <summary>One check of food composition data, as <c>audit-rules.csv</c> states it.</summary>
/// <param name="Name">The rule's name; two rows of one name are two limits of one check, and the graver finding counts.</param>
/// <param name="Kind">What it compares.</param>
/// <param name="Left">The figure that is tested.</param>
/// <param name="Severity">How much a finding weighs.</param>
/// <param name="Source">Where the check and its limits come from.</param>
public sealed record AuditRule(string Name, AuditKind Kind, AuditSum Left, AuditSeverity Severity, Source Source)
{
    /// <summary>What the figure is held against; null where limits or the food group say it.</summary>
    public AuditSum? Right { get; init; }

    /// <summary>The lower limit, in grams or in the unit of an energy.</summary>
    public double Low { get; init; } = double.NegativeInfinity;

    /// <summary>The upper limit, in grams or in the unit of an energy; for a food group the limit in robust standard deviations.</summary>
    public double High { get; init; } = double.PositiveInfinity;

    /// <summary>What rounding and methods may add up to, in grams or in the unit of an energy; for a food group the least spread, in powers of ten.</summary>
    public double Margin { get; init; }

    /// <summary>The same as a share of the right side, in per cent; the larger one counts.</summary>
    public double MarginPercent { get; init; }

    /// <summary>The least right side for which the check says anything; for a food group the fewest foods.</summary>
    public double Least { get; init; } = double.NegativeInfinity;

    /// <summary>The kind of foods that it is for, as <c>audit-groups.csv</c> says; empty for all.</summary>
    public string Foods { get; init; } = "";

    /// <summary>Whether the left side is a list of nutrients that are tested one by one, not a sum.</summary>
    public bool IsPerNutrient => Kind is AuditKind.Outlier or AuditKind.Tens or AuditKind.Samples;

    /// <summary>What the check is about, in a sentence.</summary>
    public string Meaning { get; init; } = "";
}
