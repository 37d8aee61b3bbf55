using Tamis.Physics;

namespace Tamis.Views;

/// <summary>What changes with temperature: ice, and solid fat.</summary>
public static class TemperatureCurves
{
    /// <summary>The frozen share of the water against temperature, with the freezing points in words.</summary>
    /// <param name="components">Each component with its frozen share of the water (0 to 1) at a temperature in °C, and its freezing point; null where it is not known.</param>
    /// <param name="celsius">From which temperature to which.</param>
    /// <param name="caption">What is drawn and how sure; the freezing points are said behind it.</param>
    /// <param name="limits">Temperatures to mark: the freezer, the plate.</param>
    /// <param name="figures">The numbers and the language; English if null.</param>
    public static ChartView Ice(IReadOnlyList<(string Name, Func<double, double> IceShareOfWater, double? FreezingCelsius)> components, Interval celsius, Html caption = default, IReadOnlyList<CurveEvent>? limits = null, Figures? figures = null)
    {
        var numbers = figures ?? Figures.English;
        var words = numbers.Language.Words.Physics.Heat;
        CurvePanel panel = new(words.IceTitle, new(words.Temperature, celsius) { Decimals = 1 }, new(words.Ice, Interval.Between(0, 100)) { Decimals = 0 },
            [.. components.Select(each => new Curve(each.Name, [.. Places(celsius).Select(at => (at, 100 * each.IceShareOfWater(at)))]))])
        { Events = limits ?? [] };
        var points = components.Where(each => each.FreezingCelsius is not null).Select(each => words.FreezesAt.Fill(("component", Show.Capital(each.Name)), ("temperature", numbers.Number(each.FreezingCelsius, 1, "°C").InText)));
        return CurveChart.Of([panel], Html.Join([.. caption.IsEmpty ? (Html[])[] : [caption], .. points], " "), numbers);
    }

    /// <summary>The frozen share of the water of mixtures by their freezing curves.</summary>
    /// <param name="components">Each component with its curve; one of which too little is known is named under the picture.</param>
    /// <param name="celsius">From which temperature to which.</param>
    /// <param name="caption">What is drawn and how sure.</param>
    /// <param name="limits">Temperatures to mark: the freezer, the plate.</param>
    /// <param name="figures">The numbers and the language; English if null.</param>
    public static ChartView Ice(IReadOnlyList<(string Name, FreezingCurve Curve)> components, Interval celsius, Html caption = default, IReadOnlyList<CurveEvent>? limits = null, Figures? figures = null)
    {
        var words = (figures ?? Figures.English).Language.Words.Physics.Heat;
        string[] silent = [.. components.Where(each => each.Curve.Mix.Lacks.Count > 0).Select(each => $"{each.Name} ({string.Join(", ", each.Curve.Mix.Lacks)})")];
        Html said = silent.Length == 0 ? caption : Html.Join([.. caption.IsEmpty ? (Html[])[] : [caption], words.NoIce.Fill(("components", string.Join("; ", silent)))], " ");
        return Ice([.. components.Where(each => each.Curve.Mix.Lacks.Count == 0).Select(each => (each.Name, (Func<double, double>)(at => each.Curve.IceShareAt(at).Value), FreezingOf(each.Curve)))], celsius, said, limits, figures);
    }

    private static double? FreezingOf(FreezingCurve curve) => curve.InitialFreezingPoint is { IsKnown: true } point ? point.Value : null;

    /// <summary>The solid share of the fat against temperature, between cocoa butters of several origins.</summary>
    /// <param name="components">Each component with its fats.</param>
    /// <param name="celsius">From which temperature to which.</param>
    /// <param name="caption">What is drawn and how sure.</param>
    /// <param name="limits">Temperatures to mark: the refrigerator, the plate, the mouth.</param>
    /// <param name="figures">The numbers and the language; English if null.</param>
    public static ChartView SolidFat(IReadOnlyList<(string Name, FatPhase Fat)> components, Interval celsius, Html caption = default, IReadOnlyList<CurveEvent>? limits = null, Figures? figures = null)
    {
        var numbers = figures ?? Figures.English;
        var words = numbers.Language.Words.Physics.Heat;
        var fat = components.Where(each => each.Fat.TotalGrams > 0).ToArray();
        CurvePanel panel = new(words.SolidFatTitle, new(words.Temperature, celsius) { Decimals = 1 }, new(words.SolidFat, Interval.Between(0, 100)) { Decimals = 0 }, [.. fat.Select(each => Of(each.Name, each.Fat, celsius))])
        { Events = limits ?? [] };
        string[] without = [.. components.Where(each => !(each.Fat.TotalGrams > 0)).Select(each => each.Name)];
        return CurveChart.Of([panel], Html.Join([.. caption.IsEmpty ? (Html[])[] : [caption], .. without.Length == 0 ? (Html[])[] : [words.NoFat.Fill(("components", string.Join(", ", without)))]], " "), numbers);
    }

    private static Curve Of(string name, FatPhase fat, Interval celsius)
    {
        var found = Places(celsius).Select(at => (At: at, Solid: fat.SolidOfMixture(fat.TotalGrams, new("temperature", at, "°C", Picture)))).Where(each => each.Solid.IsKnown).ToArray();
        return new(name, [.. found.Select(each => (each.At, each.Solid.Value))])
        { Between = [.. found.Where(each => each.Solid.Range is { IsPoint: false }).Select(each => (each.At, each.Solid.Range!.Value.Low, each.Solid.Range.Value.High))] };
    }

    private static readonly Source Picture = new("the axis of the picture", Evidence.Computed);

    private static IEnumerable<double> Places(Interval celsius)
    {
        const int Steps = 120;
        return Enumerable.Range(0, Steps + 1).Select(step => celsius.Low + celsius.Width * step / Steps);
    }
}
