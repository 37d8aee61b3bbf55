namespace Tamis.Formulas;

/// <summary>Which way a row of the formula sheet goes.</summary>
public enum LineWay
{
    /// <summary>Goes into the component.</summary>
    In,
    /// <summary>Leaves it: water, trim, bowl, overspray.</summary>
    Out,
    /// <summary>Was weighed at the end.</summary>
    Yield,
}

/// <summary>One row of a component, as it stands in the formula sheet for one trial.</summary>
public sealed record Line
{
    /// <summary>An ingredient or another component; in a row that leaves, the word for what leaves.</summary>
    public required string Name { get; init; }

    /// <summary>Whether it goes in, leaves, or was weighed.</summary>
    public required LineWay Way { get; init; }

    /// <summary>The step at which it goes in or leaves, 1 or more.</summary>
    public required int Step { get; init; }

    /// <summary>The quantity as the cook wrote it.</summary>
    public required WrittenQuantity Quantity { get; init; }

    /// <summary>The cell that holds the quantity.</summary>
    public required Source Origin { get; init; }

    /// <summary>The row of the formula sheet, as the spreadsheet counts.</summary>
    public required int Row { get; init; }

    /// <summary>The kitchen's own remark on the row.</summary>
    public string Notes { get; init; } = "";
}
