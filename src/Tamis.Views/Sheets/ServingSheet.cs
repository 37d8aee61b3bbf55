using System.Globalization;
using Tamis.Desserts;
using Tamis.Tasting;

namespace Tamis.Views;

/// <summary>Which plate goes where: for the kitchen, never for the room where it is tasted.</summary>
internal static class ServingSheet
{
    public static Html Of(TastingPreparation preparation)
    {
        var (plan, session, figures) = (preparation.Plan, preparation.Session, Figures.English);
        List<string> facts = [preparation.Dessert.Name];
        if (session.Date is { } day) facts.Add(day.ToString("d MMMM yyyy", CultureInfo.InvariantCulture));
        if (session.Design.Length > 0) facts.Add(session.Design);
        if (session.Seed is { } seed) facts.Add($"seed {seed.ToString(CultureInfo.InvariantCulture)}");
        var fill = Html.Of($"<span class=\"fill\">\u00a0</span>");
        var asked = Html.Of($"""
            <ul class="facts"><li>Portion {Wanted(figures.Number(session.PortionGrams, 0, "g"), session.PortionGrams)}, weighed {fill} g</li><li>Served at {Wanted(figures.Celsius(session.ServedCelsius), session.ServedCelsius)}, measured {fill} °C</li><li>Out of the cold {Wanted(figures.Minutes(session.OutOfColdMinutes), session.OutOfColdMinutes)}, from {fill} to {fill}</li></ul>

            """);
        return Html.Of($"""
            <h1>Serving sheet: {session.Name}</h1>
            <ul class="facts">{facts.Select(fact => Html.Of($"<li>{fact}</li>"))}</ul>
            {asked}<p class="caution"><b>Kitchen only</b> This sheet says which trial is behind which code.</p>
            <section class="make"><header><h2>Plates to make</h2></header>
            {Plates(plan, session, figures).ToHtml()}</section>
            <section class="make"><header><h2>Where each goes</h2><p>code, and the trial under it</p></header>
            {Places(plan).ToHtml()}</section>

            """);
    }

    private static Html Wanted(Num figure, double? known) => known is null ? Html.Of($"as you choose") : Html.Of($"<b>{figure.Text}</b>");

    private static DataTable Plates(TastingPlan plan, TastingSession session, Figures figures) => new("Plates to make",
        [Column.Words("Trial"), Column.Words("make"), Column.Words("codes"), Column.Numbers("plates"), Column.Numbers("in all", "g")],
        [.. plan.Codes.Select(trial => (trial, servings: plan.Servings.Where(serving => Names.Same(serving.Trial, trial.Trial)).ToArray())).Select(each => new Row(
            $"{each.trial.Trial}{(Names.Same(each.trial.Trial, session.Control) ? ", the control" : "")}",
            each.servings[0].Make is { } make ? make.ToString(CultureInfo.InvariantCulture) : "which?",
            Html.Of($"<b>{string.Join(", ", each.trial.Codes)}</b>"), figures.Count(each.servings.Length), figures.Mass(session.PortionGrams * each.servings.Length).WithoutUnit()))])
    { Fits = true };

    private static DataTable Places(TastingPlan plan)
    {
        var assessors = plan.Servings.GroupBy(serving => serving.Assessor).Select(group => group.OrderBy(serving => serving.Position ?? int.MaxValue).ToArray()).ToArray();
        var places = assessors.Select(servings => servings.Length).DefaultIfEmpty(0).Max();
        return new DataTable("Where each plate goes",
            [Column.Words("Assessor"), .. Enumerable.Range(1, places).Select(place => Column.Words($"place {place.ToString(CultureInfo.InvariantCulture)}"))],
            [.. assessors.Select(servings => new Row([servings[0].Assessor, .. Enumerable.Range(0, places).Select(place => place < servings.Length
                ? (Cell)Html.Of($"<span class=\"box\" role=\"img\" aria-label=\"tick\"></span> <b>{servings[place].Code}</b> {servings[place].Trial}") : "")]))])
        { IsWide = true, IsLong = true };
    }
}
