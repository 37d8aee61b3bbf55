using Tamis.Tables;

namespace Tamis.Tasting;

/// <summary>Looks whether the rows of the scores follow the order of serving, as they do where ballots are typed in as they were filled.</summary>
internal static class ServingOrder
{
    private const int FewestInOrder = 3;

    /// <summary>Where nearly everybody's rows follow the order in which they were served, those of whom they do not: two codes may have been exchanged.</summary>
    /// <param name="rows">The first row of each serving, in the order of the sheet.</param>
    public static IReadOnlyList<CellProblem> Doubts(IReadOnlyList<(Serving Serving, SheetRow Row)> rows) =>
        [.. rows.Where(each => each.Serving.Position is not null).GroupBy(each => each.Serving.Tasting).SelectMany(tasting =>
        {
            var people = tasting.GroupBy(each => each.Serving.Assessor).Select(own => own.ToArray()).Where(own => own.Length > 1).ToArray();
            var strays = people.Where(own => !IsInOrder(own)).ToArray();
            return strays.Length > 0 && people.Length - strays.Length >= Math.Max(FewestInOrder, 2 * strays.Length) ? strays.Select(Doubt) : [];
        })];

    private static bool IsInOrder((Serving Serving, SheetRow Row)[] own) => own.Zip(own.Skip(1)).All(pair => pair.First.Serving.Position < pair.Second.Serving.Position);

    // The row says whose it is; an id has no place on a page.
    private static CellProblem Doubt((Serving Serving, SheetRow Row)[] own)
    {
        var served = own.OrderBy(each => each.Serving.Position).ToArray();
        int[] apart = [.. Enumerable.Range(0, own.Length).Where(at => own[at].Serving != served[at].Serving)];
        var (row, found) = (own[apart[0]].Row, own[apart[0]].Serving);
        return row.Problem("code", apart is [_, var other]
            ? $"{served[apart[0]].Serving.Code} here and {found.Code} in row {own[other].Row.Number}, if these rows follow the order of serving in {found.Tasting} as those of the other assessors do: were two codes exchanged?"
            : $"{string.Join(", ", served.Select(each => each.Serving.Code))} from here on, if these rows follow the order of serving in {found.Tasting} as those of the other assessors do: were codes exchanged?");
    }
}
