using System.Security.Cryptography;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Tamis.Labels;

/// <summary>A line of a record.</summary>
/// <param name="Key">What it is: a line of the formula, a figure of the panel. Stands once in its section.</param>
/// <param name="Text">What it was.</param>
/// <param name="Source">Where it came from; empty where it was computed.</param>
public sealed record RecordRow(string Key, string Text, string Source);

/// <summary>A part of a record: the formula, the documents, the rules, the panel.</summary>
/// <param name="Title">Its title.</param>
/// <param name="IsPrinted">Whether its rows are what stands on the pack.</param>
/// <param name="Rows">Its rows.</param>
public sealed record RecordSection(string Title, bool IsPrinted, IReadOnlyList<RecordRow> Rows);

/// <summary>Something that is not as the record has it.</summary>
/// <param name="Section">The part of the record.</param>
/// <param name="IsPrinted">Whether it stands on the pack.</param>
/// <param name="Key">The line.</param>
/// <param name="Then">What the record has; empty where it has no such line.</param>
/// <param name="Now">What is there now; empty where it is gone.</param>
/// <param name="Source">Where it stands now, or stood then.</param>
public sealed record RecordDifference(string Section, bool IsPrinted, string Key, string Then, string Now, string Source)
{
    /// <summary>What stands as <see cref="Then"/> for a section that the record does not have: it was signed before the kit wrote that down.</summary>
    public const string NotInThisRecord = "not in this record";

    /// <summary>Whether it is a whole section that the record does not have, of which nothing can be said but what is there now.</summary>
    public bool IsNotInRecord => Then == NotInThisRecord;

    /// <summary>What is not as it was, section by section; a section that was not there then is one difference, of which nobody can say whether the pack is another.</summary>
    /// <param name="then">The sections of a record, or of another trial.</param>
    /// <param name="now">The sections to hold against them.</param>
    public static IReadOnlyList<RecordDifference> Between(IReadOnlyList<RecordSection> then, IReadOnlyList<RecordSection> now) =>
        [.. then.Concat(now).Select(section => section.Title).Distinct().SelectMany(title => Between(SectionOf(then, title), SectionOf(now, title), title))];

    private static RecordSection? SectionOf(IEnumerable<RecordSection> sections, string title) => sections.FirstOrDefault(section => section.Title == title);

    private static IEnumerable<RecordDifference> Between(RecordSection? then, RecordSection? now, string title)
    {
        if (then is null)
        {
            yield return new(title, false, "all of it", NotInThisRecord, $"{now!.Rows.Count} {(now.Rows.Count == 1 ? "line" : "lines")}", "");
            yield break;
        }
        var isPrinted = then.IsPrinted;
        var (before, after) = (then.Rows.ToDictionary(row => row.Key), now?.Rows.ToDictionary(row => row.Key) ?? []);
        foreach (var key in before.Keys.Union(after.Keys))
        {
            var (old, current) = (before.GetValueOrDefault(key), after.GetValueOrDefault(key));
            if (old?.Text != current?.Text) yield return new(title, isPrinted, key, old?.Text ?? "", current?.Text ?? "", (current ?? old)!.Source);
        }
    }
}

/// <summary>A label as it was signed: everything that it rests on, who signed it and when.</summary>
/// <remarks>The digest is SHA-256 over the record without it, so that a changed file is found out. It is no proof of who signed: it guards against slips, not against forgers.</remarks>
public sealed record LabelRecord
{
    private static readonly JsonSerializerOptions Options = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, PropertyNamingPolicy = JsonNamingPolicy.CamelCase, NewLine = "\n", UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow, AllowDuplicateProperties = false, RespectNullableAnnotations = true };

    /// <summary>The product.</summary>
    public required string Product { get; init; }

    /// <summary>The trial.</summary>
    public required string Trial { get; init; }

    /// <summary>The rule set, by its folder's name.</summary>
    public required string Rules { get; init; }

    /// <summary>The language of the label.</summary>
    public required string Language { get; init; }

    /// <summary>Who signed, as they wrote it.</summary>
    public required string Signer { get; init; }

    /// <summary>The day on which it was signed.</summary>
    public required DateOnly SignedOn { get; init; }

    /// <summary>All that it rests on and all that it says.</summary>
    public required IReadOnlyList<RecordSection> Sections { get; init; }

    /// <summary>SHA-256 over the rest, in hexadecimal; null before it is sealed.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Digest { get; init; }

    /// <summary>Whether nothing in it was changed since it was sealed.</summary>
    [JsonIgnore]
    public bool IsUnchanged => Digest is not null && Digest == DigestOf(this);

    /// <summary>The record with its digest.</summary>
    /// <exception cref="InvalidOperationException">A section or a line stands in it twice: it could not be read again.</exception>
    public LabelRecord Sealed() => Repeated() is { } twice
        ? throw new InvalidOperationException($"The label cannot be signed: {twice} stands in the record twice.")
        : this with { Digest = DigestOf(this) };

    /// <summary>The record as text.</summary>
    public string ToJson() => JsonSerializer.Serialize(this, Options) + "\n";

    /// <summary>Reads a record.</summary>
    /// <exception cref="FormatException">The text is no record.</exception>
    public static LabelRecord FromJson(string text)
    {
        try
        {
            var record = JsonSerializer.Deserialize<LabelRecord>(text, Options) ?? throw new FormatException("The file is empty; a record is what the program wrote when a label was signed.");
            return record.Repeated() is { } twice ? throw new FormatException($"The file is no record of a label ({twice} stands in it twice); take it from where it was signed, it is not mended by hand.") : record;
        }
        catch (JsonException error)
        {
            throw new FormatException($"The file is no record of a label (line {(error.LineNumber ?? 0) + 1}); take it from where it was signed, it is not mended by hand.", error);
        }
    }

    private string? Repeated() => Sections.GroupBy(section => section.Title).FirstOrDefault(group => group.Count() > 1)?.Key
        ?? Sections.SelectMany(section => section.Rows.GroupBy(row => row.Key).Where(group => group.Count() > 1).Select(group => $"{section.Title}: {group.Key}")).FirstOrDefault();

    private static string DigestOf(LabelRecord record) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes((record with { Digest = null }).ToJson())));
}
