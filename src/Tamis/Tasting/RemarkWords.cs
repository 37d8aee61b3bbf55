using Tamis.Tables;

namespace Tamis.Tasting;

/// <summary>One thing that remarks speak of, and the words by which they do.</summary>
/// <param name="Code">What is counted, in the kitchen's words: <c>too sweet</c>.</param>
/// <param name="Words">Words and phrases that say it.</param>
public sealed record RemarkCode(string Code, IReadOnlyList<string> Words);

/// <summary>How many people said a thing of one trial at the bench.</summary>
/// <param name="Tasting">The bench tasting.</param>
/// <param name="Trial">The trial.</param>
/// <param name="Code">What was said; null counts those whose remark holds no word of the list.</param>
/// <param name="People">How many people said it.</param>
/// <param name="TastedBy">How many people tasted the trial.</param>
public sealed record RemarkCount(string Tasting, string Trial, string? Code, int People, int TastedBy);

/// <summary>A list of words by which free remarks are coded: the kit's own, or the kitchen's <c>remark_words.csv</c>.</summary>
/// <param name="Codes">What is counted, in the order of the sheet.</param>
/// <remarks>Counting words is not understanding them: <c>not too sweet</c> holds <c>too sweet</c>. A phrase that begins with a word of denial is left out.</remarks>
public sealed record RemarkWords(IReadOnlyList<RemarkCode> Codes)
{
    private static readonly Lazy<RemarkWords> Shipped = new(() =>
    {
        List<CellProblem> problems = [];
        var words = Read(SheetFile.Read(Path.Combine(KitFolder.Data("tasting"), "remark-words.csv")), problems);
        return problems.Count == 0 ? words : throw new TableException(problems);
    });

    private static readonly string[] Denials = ["not", "no", "never", "isn't", "less"];

    /// <summary>The kit's own list.</summary>
    public static RemarkWords Kit => Shipped.Value;

    /// <summary>Reads a list: columns <c>code</c> and <c>words</c>, the words parted by semicolons.</summary>
    public static RemarkWords Read(Sheet sheet, ICollection<CellProblem> problems)
    {
        List<RemarkCode> codes = [];
        if (!sheet.Require(["code", "words"], problems)) return new(codes);
        foreach (var row in sheet.Rows)
        {
            List<CellProblem> own = [];
            RowReader reader = new(row, own);
            var (code, words) = (reader.Required("code"), reader.Words("words"));
            if (words.Count == 0) reader.Note("words", "the words and phrases that say it, parted by '; '");
            if (code.Length > 0 && codes.Any(each => Names.Same(each.Code, code))) reader.Note("code", "each code once");
            foreach (var problem in own) problems.Add(problem);
            if (own.Count == 0) codes.Add(new(code, words));
        }
        return new(codes);
    }

    /// <summary>The codes that a remark holds, in the order of the list.</summary>
    public IReadOnlyList<string> CodesOf(string remark)
    {
        var text = Wording(remark);
        return [.. Codes.Where(code => code.Words.Any(word => Holds(text, Wording(word)))).Select(code => code.Code)];
    }

    /// <summary>What was said at the bench, counted by trial: each person once a code.</summary>
    public IReadOnlyList<RemarkCount> Count(TastingLog log) =>
        [.. from session in log.Sessions
            where session.IsBench
            from trial in log.TrialsIn(session.Name)
            let tasted = log.Tasted.Where(serving => Names.Same(serving.Tasting, session.Name) && Names.Same(serving.Trial, trial)).ToHashSet()
            let people = tasted.Select(serving => serving.Assessor).Distinct().Count()
            let said = log.Remarks.Where(remark => tasted.Contains(remark.Serving)).SelectMany(remark => CodesOf(remark.Text).Cast<string?>().DefaultIfEmpty(null).Select(code => (code, remark.Serving.Assessor))).Distinct()
            from code in said.GroupBy(each => each.code)
            orderby code.Key is null
            select new RemarkCount(session.Name, trial, code.Key, code.Count(), people)];

    private static bool Holds(string text, string phrase)
    {
        for (var at = text.IndexOf(phrase, StringComparison.Ordinal); at >= 0; at = text.IndexOf(phrase, at + 1, StringComparison.Ordinal))
            if (!Denials.Any(denial => text[..at].EndsWith($" {denial}", StringComparison.Ordinal))) return true;
        return false;
    }

    // Words with a blank on either side, so that 'sharp' is not found in 'sharpen'.
    private static string Wording(string text) =>
        $" {string.Join(' ', new string([.. text.ToLowerInvariant().Select(letter => char.IsLetterOrDigit(letter) || letter == '\'' ? letter : ' ')]).Split(' ', StringSplitOptions.RemoveEmptyEntries))} ";
}
