namespace Tamis.Views.Tests;

public class FormatterTests
{
    [Theory]
    [InlineData(typeof(Html))]
    [InlineData(typeof(DataTable))]
    [InlineData(typeof(ChartView))]
    [InlineData(typeof(WeighingSheet))]
    [InlineData(typeof(NutritionPanelView))]
    public void View_Type_SaysHowItShowsItself(Type type)
    {
        // A notebook host looks these up by name: the attribute, its two properties, and the three members of each formatter.
        var attribute = type.GetCustomAttributes(inherit: false).Single(attribute => attribute.GetType().Name == "TypeFormatterSourceAttribute");
        var source = Activator.CreateInstance((Type)attribute.GetType().GetProperty("FormatterSourceType")!.GetValue(attribute)!)!;
        var formatters = ((IEnumerable<object>)source.GetType().GetMethod("CreateTypeFormatters")!.Invoke(source, null)!).ToArray();

        Assert.Equal(["text/html", "text/plain"], (string[])attribute.GetType().GetProperty("PreferredMimeTypes")!.GetValue(attribute)!);
        Assert.Equal(["text/html", "text/plain"], formatters.Select(formatter => (string)formatter.GetType().GetProperty("MimeType")!.GetValue(formatter)!));
        Assert.All(formatters, formatter => Assert.Equal(type, formatter.GetType().GetProperty("Type")!.GetValue(formatter)));
    }

    [Fact]
    public void Format_Html_IsFramedForTheNotebookAndPlainElsewhere()
    {
        var formatters = new ViewFormatters<Html>().CreateTypeFormatters().Cast<ViewFormatter<Html>>().ToArray();

        Assert.Equal(["<div class=\"tamis\"><b>a</b></div>", "a"], formatters.Select(formatter =>
        {
            using var writer = new StringWriter();
            Assert.True(formatter.Format(Html.Of($"<b>a</b>"), writer));
            return writer.ToString();
        }));
    }

    [Fact]
    public void Format_AnotherType_IsRefused()
    {
        using var writer = new StringWriter();

        Assert.All(new ViewFormatters<Html>().CreateTypeFormatters().Cast<ViewFormatter<Html>>(), formatter => Assert.False(formatter.Format("text", writer)));
    }
}
