using System.Globalization;
using System.Reflection;
using Microsoft.Data.Analysis;

namespace Tamis.Tables;

/// <summary>Tables in and out of a notebook: sheets, lists of flat records and data frames.</summary>
/// <remarks>A blank is a missing value in the frame, never a zero. The frame library's own CSV reader is not used: it reads <c>500,5</c> as 5005.</remarks>
public static class Frames
{
    /// <summary>A sheet as a frame: columns of numbers, of dates or of texts, as all their filled cells read.</summary>
    public static DataFrame ToFrame(this Sheet sheet) =>
        new(sheet.Columns.Where(column => column.Length > 0).Select(column => Column(column, sheet)));

    /// <summary>A list of flat records as a frame, one column a public property, in the order of the record.</summary>
    /// <remarks>Numbers are columns of doubles, dates and booleans their own; everything else is the text that it shows.</remarks>
    public static DataFrame ToFrame<T>(this IEnumerable<T> records)
    {
        T[] all = [.. records];
        var properties = typeof(T).GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(property => property.CanRead && property.GetIndexParameters() is []);
        return new(properties.Select(property => Column(property, [.. all.Select(record => property.GetValue(record))])));
    }

    /// <summary>A frame as a sheet in the dialect of the files that the kit ships.</summary>
    /// <param name="frame">The frame.</param>
    /// <param name="file">The name that the sheet goes by.</param>
    public static Sheet ToSheet(this DataFrame frame, string file)
    {
        string[] columns = [.. frame.Columns.Select(column => column.Name)];
        return new(file, SheetDialect.Shipped, columns, frame.Rows.Select((row, index) =>
            (index + 2, (IReadOnlyList<string>)[.. row.Select(value => SheetCell.Write(value, SheetDialect.Shipped))])));
    }

    private static DataFrameColumn Column(string name, Sheet sheet)
    {
        string[] cells = [.. sheet.Rows.Select(row => row[name])];
        var filled = cells.Where(cell => cell.Length > 0).ToArray();
        if (filled.Length > 0 && filled.All(cell => Number(cell) is not null)) return new DoubleDataFrameColumn(name, cells.Select(Number));
        if (filled.Length > 0 && filled.All(cell => Date(cell) is not null)) return new DateTimeDataFrameColumn(name, cells.Select(Date));
        return new StringDataFrameColumn(name, cells.Select(cell => cell.Length > 0 ? cell : null));

        double? Number(string cell) => NumberText.TryParse(cell, sheet.Dialect.DecimalMark, out var value, out _) ? value : null;
        DateTime? Date(string cell) => DateText.TryParse(cell, sheet.Dialect.DateOrder, out var date) ? date.ToDateTime(TimeOnly.MinValue) : null;
    }

    private static DataFrameColumn Column(PropertyInfo property, object?[] values)
    {
        var type = Nullable.GetUnderlyingType(property.PropertyType) ?? property.PropertyType;
        return Type.GetTypeCode(type) switch
        {
            TypeCode.Boolean => new BooleanDataFrameColumn(property.Name, values.Select(value => (bool?)value)),
            TypeCode.DateTime => new DateTimeDataFrameColumn(property.Name, values.Select(value => (DateTime?)value)),
            TypeCode.Object when type == typeof(DateOnly) => new DateTimeDataFrameColumn(property.Name, values.Select(value => ((DateOnly?)value)?.ToDateTime(TimeOnly.MinValue))),
            >= TypeCode.SByte and <= TypeCode.Decimal when !type.IsEnum => new DoubleDataFrameColumn(property.Name, values.Select(Known)),
            _ => new StringDataFrameColumn(property.Name, values.Select(value => Convert.ToString(value, CultureInfo.InvariantCulture) is { Length: > 0 } text ? text : null)),
        };
    }

    // Not a number is how columns of the kit write unknown.
    private static double? Known(object? value) => value is null ? null : Convert.ToDouble(value, CultureInfo.InvariantCulture) is var number && double.IsNaN(number) ? null : number;
}
