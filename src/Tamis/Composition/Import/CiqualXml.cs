using System.Text;
using System.Text.RegularExpressions;
using System.Xml;
using Tamis.Tables;

namespace Tamis.Composition.Import;

/// <summary>Reads an XML file of the French table: a flat list of records, each a few fields of text.</summary>
internal static partial class CiqualXml
{
    private const int Beginning = 200;

    /// <summary>Goes through the records.</summary>
    /// <param name="path">The file.</param>
    /// <param name="record">The element that is a record.</param>
    /// <param name="problems">Receives what cannot be read.</param>
    /// <param name="each">Sees the fields of each record, by name, without the blanks that the publisher pads them with.</param>
    /// <returns>How many records there are.</returns>
    public static int Read(string path, string record, List<CellProblem> problems, Action<IReadOnlyDictionary<string, string>> each)
    {
        var count = 0;
        Dictionary<string, string> fields = new(StringComparer.OrdinalIgnoreCase);
        try
        {
            using StringReader text = new(Mended(Decoded(File.ReadAllBytes(path))));
            using var xml = XmlReader.Create(text, new() { DtdProcessing = DtdProcessing.Prohibit, IgnoreWhitespace = true, IgnoreComments = true });
            while (xml.ReadToFollowing(record))
            {
                fields.Clear();
                using var inside = xml.ReadSubtree();
                inside.Read();
                inside.Read();
                while (inside.NodeType == XmlNodeType.Element) fields[inside.Name] = inside.ReadElementContentAsString().Trim();
                count++;
                each(fields);
            }
        }
        catch (XmlException error)
        {
            problems.Add(new(Path.GetFileName(path), error.LineNumber, "", "", $"well-formed XML; {error.Message}"));
        }
        return count;
    }

    // The publisher's own files are Windows-1252 and say so; copies of them are often UTF-8.
    private static string Decoded(byte[] bytes)
    {
        var beginning = Encoding.ASCII.GetString(bytes, 0, Math.Min(bytes.Length, Beginning));
        var encoding = beginning.Contains("windows-1252", StringComparison.OrdinalIgnoreCase) ? SheetEncoding.Windows1252 : SheetEncoding.Utf8;
        return SheetText.EncodingFor(encoding).GetString(bytes).TrimStart('\ufeff');
    }

    // "< 0,5" and "&" stand bare in some releases, where XML wants them written out.
    private static string Mended(string text) => BareAmpersand().Replace(BareLess().Replace(text, "&lt;"), "&amp;");

    [GeneratedRegex(@"<(?=[\s\d=])", RegexOptions.CultureInvariant)]
    private static partial Regex BareLess();

    [GeneratedRegex(@"&(?!(#\d+|#x[0-9a-fA-F]+|\w+);)", RegexOptions.CultureInvariant)]
    private static partial Regex BareAmpersand();
}
