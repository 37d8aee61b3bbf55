using System.Text.RegularExpressions;
using Tamis.Tables;

namespace Tamis.Composition.Import;

/// <summary>Imports the Ciqual French food composition table as published: the semicolon CSV (English or French), the XML parts, or both.</summary>
/// <remarks>Protein is nitrogen times 6.25 (<c>PROCNT</c>, with that factor); the publisher's protein by the factor of the food stands beside it as <c>PROCNT_JONES</c>.
/// Carbohydrate is without fibre (<c>CHOAVLDF</c>). Salt and sodium come from different samples and both stay. A repeated code is merged.</remarks>
internal sealed partial class Ciqual
{
    private const double ProteinFactor = 6.25;

    private static readonly SourceRow Publication = new("CIQUAL 2020", Evidence.Published, "Ciqual French food composition table")
    {
        Publisher = "Anses (French agency for food, environmental and occupational health and safety)", Year = "2020",
        Licence = "Licence Ouverte (Etalab), attribution", Cite = "Anses. 2020. Ciqual French food composition table.",
    };

    // The narrowest first; a file in French names groups and foods in French alone.
    private static readonly string[] GroupNames = ["alim_ssssgrp_nom_eng", "alim_ssgrp_nom_eng", "alim_grp_nom_eng", "alim_ssssgrp_nom_fr", "alim_ssgrp_nom_fr", "alim_grp_nom_fr"];

    private readonly string _folder;
    private readonly ImportDraft _draft;
    private readonly IReadOnlyDictionary<string, ImportCode> _byCode;
    private readonly Dictionary<string, ImportCode> _byName = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _groups = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _frenchNames = new(StringComparer.Ordinal);

    private Ciqual(string folder, ImportCodes codes)
    {
        (_folder, _draft) = (folder, new("Ciqual", Publication, codes));
        _byCode = codes.Of("ciqual");
        foreach (var code in _byCode.Values)
        {
            // Energy stands there twice under one name, in two units.
            foreach (var name in (string[])[code.Name, code.OtherName]) _byName[Key(name, code.Unit)] = code;
        }
    }

    /// <summary>Imports a folder.</summary>
    /// <exception cref="TableException">A file that must be there is not, or something in the files cannot be read.</exception>
    public static Imported Import(string folder, ImportCodes codes) => new Ciqual(folder, codes).Run();

    private Imported Run()
    {
        Xml("alim_grp*.xml", "ALIM_GRP", Group);
        // The XML names foods in both languages; without it the CSV names them in one.
        Xml("alim_*.xml", "ALIM", Food);
        Xml("const*.xml", "CONST", Component);
        var hasValues = Xml("compo*.xml", "COMPO", Value);
        foreach (var path in hasValues ? [] : Files("*.csv"))
        {
            Table(path);
            hasValues = true;
        }
        if (!hasValues) _draft.Problems.Add(new("compo.xml", 0, "", "", "neither an XML file of values (compo….xml) nor a CSV table is there, and one of them holds the figures"));
        return _draft.Build();
    }

    private string[] Files(string pattern) => [.. Directory.EnumerateFiles(_folder, pattern, new EnumerationOptions { MatchCasing = MatchCasing.CaseInsensitive }).Order(StringComparer.Ordinal)];

    private bool Xml(string pattern, string record, Action<IReadOnlyDictionary<string, string>> each)
    {
        var files = Files(pattern).Where(path => record != "ALIM" || !Path.GetFileName(path).StartsWith("alim_grp", StringComparison.OrdinalIgnoreCase)).ToArray();
        foreach (var path in files) _draft.Read(Path.GetFileName(path), CiqualXml.Read(path, record, _draft.Problems, each));
        return files.Length > 0;
    }

    private void Group(IReadOnlyDictionary<string, string> fields)
    {
        // The narrowest group that has a name.
        foreach (var level in (string[])["alim_grp", "alim_ssgrp", "alim_ssssgrp"])
            if (fields.GetValueOrDefault($"{level}_code") is { Length: > 0 } code && fields.GetValueOrDefault($"{level}_nom_eng") is { Length: > 0 } name && name != "-") _groups[code] = name;
    }

    private void Food(IReadOnlyDictionary<string, string> fields)
    {
        var code = fields.GetValueOrDefault("alim_code", "");
        _frenchNames[code] = fields.GetValueOrDefault("alim_nom_fr", "");
        var group = ((string[])["alim_ssssgrp_code", "alim_ssgrp_code", "alim_grp_code"]).Select(level => _groups.GetValueOrDefault(fields.GetValueOrDefault(level, ""), "")).FirstOrDefault(name => name.Length > 0) ?? "";
        AddFood(code, fields.GetValueOrDefault("alim_nom_eng") is { Length: > 0 } english ? english : _frenchNames[code], group);
    }

    private int AddFood(string code, string name, string group) => _draft.Add(new Food($"CIQUAL {code}", name, group, _draft.Source with { Locator = $"food {code}" })
    {
        PublishedName = _frenchNames.GetValueOrDefault(code, ""), NitrogenFactor = ProteinFactor,
    });

    private void Component(IReadOnlyDictionary<string, string> fields)
    {
        var code = fields.GetValueOrDefault("const_code", "");
        if (!_byCode.TryGetValue(code, out var known))
            _draft.Note(ImportDeed.Left, "nutrients", "a component that import-codes.csv does not know", $"{code} {fields.GetValueOrDefault("const_nom_eng")}");
        else if (UnitOf(fields.GetValueOrDefault("const_nom_eng", "")) is { } unit && unit != known.Unit)
            _draft.Problems.Add(new("const.xml", 0, "const_nom_eng", fields["const_nom_eng"], $"{known.Unit}, the unit of component {code} in import-codes.csv"));
    }

    private void Value(IReadOnlyDictionary<string, string> fields)
    {
        var (code, component, text) = (fields.GetValueOrDefault("alim_code", ""), fields.GetValueOrDefault("const_code", ""), fields.GetValueOrDefault("teneur", ""));
        if (_draft.Row($"CIQUAL {code}") is not (>= 0 and var food)) _draft.Note(ImportDeed.Left, "values", "of a food that the file of foods does not name", code);
        else if (!_byCode.TryGetValue(component, out var known)) _draft.Note(ImportDeed.Left, "values", "of a component that import-codes.csv does not know", component);
        else
        {
            var confidence = fields.GetValueOrDefault("code_confiance", "");
            var source = fields.GetValueOrDefault("source_code", "");
            var method = string.Join("; ", ((string[])[confidence.Length > 0 ? $"confidence {confidence}" : "", source.Length > 0 ? $"publisher’s source {source}" : ""]).Where(part => part.Length > 0));
            Cell(food, known, text, method, new("compo.xml", 0, "teneur", text, $"a number, -, < a number or traces (food {code}, component {component})"),
                CiqualCell.Number(fields.GetValueOrDefault("min", "")), CiqualCell.Number(fields.GetValueOrDefault("max", "")));
        }
    }

    private void Table(string path)
    {
        if (_draft.Sheet(path, ',', "alim_code") is not { } sheet) return;
        List<(string Column, ImportCode Code)> columns = [];
        foreach (var column in sheet.Columns.Where(column => column.Contains("/100", StringComparison.Ordinal)))
        {
            if (_byName.TryGetValue(Key(UnitAtEnd().Replace(column, ""), UnitOf(column) ?? ""), out var code)) columns.Add((column, code));
            else _draft.Note(ImportDeed.Left, "nutrients", "a component that import-codes.csv does not know in this unit", column);
        }
        HashSet<string> seen = new(StringComparer.Ordinal);
        foreach (var row in sheet.Rows)
        {
            var code = row["alim_code"];
            if (code.Length == 0)
            {
                _draft.Problems.Add(row.Problem("alim_code", "the code of the food"));
                continue;
            }
            if (!seen.Add(code)) _draft.Note(ImportDeed.Merged, "foods", "a code that comes again: the values of both rows are one food’s", $"{code} {(row["alim_nom_eng"] is { Length: > 0 } name ? name : row["alim_nom_fr"])}");
            var group = GroupNames.Select(column => row[column]).FirstOrDefault(name => name is not ("" or "-")) ?? "";
            var food = AddFood(code, row["alim_nom_eng"] is { Length: > 0 } english ? english : row["alim_nom_fr"], group);
            foreach (var (column, known) in columns) Cell(food, known, row[column], "", row.Problem(column, "a number, -, < a number or traces"));
        }
    }

    private void Cell(int food, ImportCode code, string text, string method, CellProblem problem, double low = double.NaN, double high = double.NaN)
    {
        var cell = CiqualCell.Parse(text);
        if (cell.Kind == CiqualKind.Other) _draft.Problems.Add(problem);
        else if (cell.Kind == CiqualKind.Missing) _draft.Note(ImportDeed.Left, "values", text.Length == 0 ? "blank in the file: unknown, not zero" : "a dash in the file: unknown, not zero");
        else if (cell.ToRow(Publication.Key, method) is { } row) _draft.Take(food, code, high > low && row.State == ContentState.Measured ? row with { Low = low, High = high } : row);
    }

    private static string? UnitOf(string name) => UnitAtEnd().Match(name) is { Success: true } match ? match.Groups["unit"].Value.Replace('\u00b5', 'u').Replace('\u03bc', 'u') : null;

    // The publisher's names differ in blanks from file to file.
    private static string Key(string name, string unit) => string.Concat(name.Where(letter => !char.IsWhiteSpace(letter))).ToLowerInvariant() + " in " + unit;

    [GeneratedRegex(@"\s*\((?<unit>[^\s()/]+)/\s*100\s?g\)\s*$", RegexOptions.CultureInvariant)]
    private static partial Regex UnitAtEnd();
}
