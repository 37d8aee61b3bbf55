namespace Tamis.Views;

/// <summary>Says how long something takes as a kitchen does: minutes, hours and minutes, days.</summary>
public static class KitchenTime
{
    private const double MinutesPerHour = 60, MinutesPerDay = 1440, DaysFromHours = 48;

    /// <summary>A time, <c>25 min</c>, <c>2 h 30 min</c>, <c>3.5 days</c>: whole minutes to ten hours, whole hours to two days, then days, with one decimal under ten days that are not whole.</summary>
    public static string InWords(double minutes, Figures? figures = null)
    {
        var numbers = figures ?? Figures.English;
        var words = numbers.Language.Words;
        if (!double.IsFinite(minutes)) return words.NotKnown;
        if (minutes >= DaysFromHours * MinutesPerHour) return numbers.Number(minutes / MinutesPerDay, DecimalsOf(minutes / MinutesPerDay), words.Physics.Days).Text;
        var whole = Math.Round(minutes);
        if (whole < MinutesPerHour) return numbers.Minutes(whole).Text;
        if (whole >= 10 * MinutesPerHour) return numbers.Number(minutes / MinutesPerHour, 0, words.Physics.Hours).Text;
        var (hours, rest) = (Math.Floor(whole / MinutesPerHour), whole % MinutesPerHour);
        return numbers.Number(hours, 0, words.Physics.Hours).Text + (rest == 0 ? "" : " " + numbers.Minutes(rest).Text);
    }

    /// <summary>A time that nobody knows to the minute: whole hours to two days, then days.</summary>
    public static string Roughly(double minutes, Figures? figures = null)
    {
        var numbers = figures ?? Figures.English;
        var words = numbers.Language.Words;
        return minutes < MinutesPerHour ? $"{words.Under} {numbers.Number(1, 0, words.Physics.Hours).Text}"
            : minutes < DaysFromHours * MinutesPerHour ? numbers.Number(minutes / MinutesPerHour, 0, words.Physics.Hours).Text
            : InWords(minutes, numbers);
    }

    private static int DecimalsOf(double days) => days >= 10 || Math.Abs(days - Math.Round(days)) < 0.05 ? 0 : 1;

    /// <summary>The instant after some minutes, <c>after 2 h</c>; the start for none.</summary>
    public static string After(double minutes, Figures? figures = null)
    {
        var words = (figures ?? Figures.English).Language.Words.Physics;
        return minutes <= 0 ? words.AtTheStart : $"{words.After} {InWords(minutes, figures)}";
    }
}
