using Tamis.Formulas;
using Tamis.Production;

namespace Tamis.Desserts;

/// <summary>A task of the plan with the step of the method that it is, or a part of it.</summary>
/// <param name="Name">The task's name: <c>mousse 7</c>, or <c>mousse 7, 2 of 2</c>.</param>
/// <param name="Step">The step.</param>
/// <param name="Run">Which part, 1 or more.</param>
/// <param name="Runs">In how many parts.</param>
/// <param name="WrittenMinutes">The minutes as written, or where nobody wrote them what was assumed.</param>
/// <param name="Remark">Why it takes another time than written, or several runs; empty where it does not.</param>
public sealed record WorkStep(string Name, MethodStep Step, int Run, int Runs, Interval WrittenMinutes, string Remark);

/// <summary>When an order is due.</summary>
internal static class OrderText
{
    /// <summary>The day and hour behind <c>for</c> in <c>12 of T10 for 2026-11-28 11:00</c>; null where there is none.</summary>
    public static DateTime? Due(Dessert dessert)
    {
        var order = dessert.Facts.Text("order");
        var at = order?.LastIndexOf(" for ", StringComparison.OrdinalIgnoreCase) ?? -1;
        return at >= 0 && DayAndHourText.TryParse(order![(at + 5)..], Tables.DateOrder.YearMonthDay, out var due) ? due : null;
    }
}
