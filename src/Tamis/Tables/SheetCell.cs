using System.Globalization;

namespace Tamis.Tables;

/// <summary>Values as the text of a cell.</summary>
public static class SheetCell
{
    /// <summary>The text by which a file of this dialect states a value; a missing value, and one that is not a number, is a blank.</summary>
    public static string Write(object? value, SheetDialect dialect) => value switch
    {
        null or double.NaN or float.NaN => "",
        string text => text,
        double or float or decimal => NumberText.Write(Convert.ToDouble(value, CultureInfo.InvariantCulture), dialect.DecimalMark),
        DateOnly date => DateText.Write(date, dialect.DateOrder),
        DateTime { TimeOfDay.Ticks: 0 } day => DateText.Write(DateOnly.FromDateTime(day), dialect.DateOrder),
        DateTime moment => DateText.Write(DateOnly.FromDateTime(moment), dialect.DateOrder) + moment.ToString(" HH:mm", CultureInfo.InvariantCulture),
        IFormattable other => other.ToString(null, CultureInfo.InvariantCulture),
        _ => value.ToString() ?? "",
    };
}
