using System.Globalization;
using Tamis.Desserts;
using Tamis.Tasting;

namespace Tamis.Views;

public static partial class Show
{
    /// <summary>How the assessors taste, nobody named: agreement with the others, use of the scale, repeats.</summary>
    public static Html Assessors(Dessert dessert)
    {
        if (dessert.Tastings is not { } log) return NoScores();
        var records = AssessorRecord.Of(log).Where(record => record.Agreement is not null).OrderByDescending(record => record.Agreement).ToArray();
        if (records.Length < 3) return Notes.Small(Html.Of($"Fewer than three people scored intensities together: nobody can be set beside the others."));
        var low = records.Where(record => record.Overall?.Range is not { Low: > 0 }).ToArray();
        DotPanel agreement = new("Agreement with the others", [.. records.Select((record, at) => new DotRow($"person {(at + 1).ToString(CultureInfo.InvariantCulture)}", record.Agreement!.Value, record.Overall!.Range))], Interval.Between(-1, 1))
        { AxisTitle = "\u22121 against them, 0 by chance, 1 as they do", Description = $"{records.Length} assessors by how far their marks follow the mean of the others." };
        var use = records.Where(record => record.ScaleUse is not null).Select(record => record.ScaleUse!.Value).Order().ToArray();
        var repeats = records.Where(record => record.RepeatPoints is not null).Select(record => record.RepeatPoints!.Value).Order().ToArray();
        List<Html> said = [Html.Of($"{records.Length} people scored intensities in {records.SelectMany(record => record.Agreements).Select(each => each.Tasting).Distinct().Count()} tastings; they are numbered by their agreement and not named. What somebody likes is never wrong, so liking is left out.")];
        if (use.Length > 1) said.Add(Html.Of($"Where the others see a difference of one point, the person who spreads least sees {Figures.Score(use[0]).Text}, the one who spreads most {Figures.Score(use[^1]).Text}."));
        if (repeats.Length > 1) said.Add(Html.Of($"Served the same trial twice under two codes, the steadiest was {Figures.Score(repeats[0]).Text} points apart from plate to plate, the least steady {Figures.Score(repeats[^1]).Text} (standard deviation)."));
        var tells = records.SelectMany(record => record.Levels).Where(level => level.TellsApart is not null).GroupBy(level => level.Attribute.Name).Select(scale => (scale.Key, Told: scale.Count(level => level.TellsApart == true), Of: scale.Count())).Where(scale => scale.Of > 2).OrderByDescending(scale => scale.Told).ToArray();
        if (tells.Length > 1) said.Add(Html.Of($"By marks of their own, {tells[0].Told} of {tells[0].Of} tell trials apart in {tells[0].Key}, and {tells[^1].Told} of {tells[^1].Of} in {tells[^1].Key}, beyond how much their own plates differ."));
        said.Add(low.Length == 0 ? Html.Of($"Everybody’s marks follow the others beyond chance.") : Html.Of($"{(low.Length == 1 ? "One person’s marks" : $"The marks of {low.Length} people")} cannot be told from chance beside the others: perhaps there are too few, perhaps a scale was read the other way round, perhaps {(low.Length == 1 ? "that person tastes" : "they taste")} otherwise. Ask before leaving anybody out; the comparisons above leave out nobody."));
        return Notes.Paragraph(Html.Join(said, " "))
            + DotsWithIntervals.Of([agreement], Html.Of($"Correlation of a person’s marks with the mean of the others, each scale about its own mean, over all tastings, with its 95 % interval.")).ToHtml()
            + Notes.Small(Html.Of($"A sheet for each assessor is printed by the command tasting with --feedback: it goes to that person and to nobody else."));
    }

    /// <summary>The feedback sheet of one assessor: for that person only.</summary>
    public static Html Feedback(AssessorRecord record)
    {
        List<Html> said = [];
        if (record.Agreement is { } agreement)
            said.Add(Html.Of($"Your marks {(agreement > 0.6 ? "follow the others closely" : agreement > 0.3 ? "mostly go with the others" : agreement > 0 ? "go with the others now and then" : "go their own way")}: agreement {Figures.Number(agreement, 2).Text}, where 1 is the same order and 0 is chance. Your own way is not a wrong way; a small agreement may mean that you read a scale otherwise, so compare the references again."));
        if (record.ScaleUse is { } use)
            said.Add(Html.Of($"Where the others see a difference of one point you see {Figures.Score(use).Text}{(use < 0.7 ? ": use more of the line" : use > 1.4 ? ": you use more of the line than most" : "")}."));
        said.Add(Math.Abs(record.LevelPoints) < 0.5 ? Html.Of($"You mark about as high as the others.") : Html.Of($"You mark {Figures.Score(Math.Abs(record.LevelPoints)).Text} points {(record.LevelPoints > 0 ? "higher" : "lower")} than the others on the whole. That does no harm: you are compared with yourself."));
        said.Add(record.RepeatPoints is { } repeat && record.OthersRepeatPoints is { } others
            ? Html.Of($"Served the same thing twice, your plates lay {Figures.Score(repeat).Text} points apart; the others’ {Figures.Score(others).Text}.")
            : Html.Of($"Nothing was served to you twice yet, so your steadiness is not known."));
        string[] told = [.. record.Levels.Where(level => level.TellsApart == true).Select(level => level.Attribute.Name)], untold = [.. record.Levels.Where(level => level.TellsApart == false).Select(level => level.Attribute.Name)];
        if (told.Length > 0) said.Add(Html.Of($"In {AndAll(told)} your marks tell the trials apart by more than your own plates differ{(untold.Length == 0 ? "" : $"; in {AndAll(untold)} they do not yet, which may be the trials and not you")}."));
        else if (untold.Length > 0) said.Add(Html.Of($"In no scale do your marks tell the trials apart by more than your own plates differ: the trials may be too alike."));
        foreach (var drift in record.Levels.Where(level => level.DriftPoints is { } points && points != 0).OrderByDescending(level => Math.Abs(level.DriftPoints!.Value)).Take(2))
            said.Add(Html.Of($"From tasting to tasting your {drift.Attribute.Name} of the same trial {(drift.DriftPoints > 0 ? "rises" : "falls")} by {Figures.Score(Math.Abs(drift.DriftPoints!.Value)).Text} points: look at your references again, or the trial was made otherwise."));
        var course = record.Agreements.Count < 2 ? Html.Empty : new DataTable("Tasting by tasting",
            [Column.Words("Tasting"), Column.Numbers("agreement"), Column.Numbers("95 % interval"), Column.Numbers("marks")],
            [.. record.Agreements.Select(each => new Row(each.Tasting, Figures.Number(each.Agreement, 2), Num.Said(each.Range is { } range ? Figures.Between(range, 2, "") : ""), Figures.Count(each.Count)))]) { Fits = true }.ToHtml();
        return Html.Of($"<section class=\"ballot\"><header><h2>Assessor {record.Assessor}</h2><p>for this person only</p></header>\n")
            + Html.Join(said.Select(Notes.Paragraph)) + course
            + new DataTable("Your level and the others’", [Column.Words("Scale"), Column.Numbers("yours"), Column.Numbers("the others’"), Column.Numbers("difference")],
                [.. record.Levels.Select(level => new Row(level.Attribute.Name, Figures.Score(level.OwnPoints), Figures.Score(level.OthersPoints), Figures.Difference(level.OwnPoints - level.OthersPoints, 1)))]) { Fits = true }.ToHtml()
            + Html.Of($"</section>\n");
    }
}
