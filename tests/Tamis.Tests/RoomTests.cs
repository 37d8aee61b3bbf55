using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace Tamis.Tests;

/// <summary>Holds the picture of the rooms against the code: dependencies point down only.</summary>
public class RoomTests
{
    private static readonly string[] Below = ["Tables"];

    private static readonly Dictionary<string, string[]> Allowed = new()
    {
        ["Tables"] = [],
        ["Composition"] = [.. Below, "Statistics"],
        ["Formulas"] = [.. Below, "Composition"],
        ["Losses"] = [.. Below, "Composition", "Formulas", "Statistics"],
        ["Labels"] = [.. Below, "Composition", "Formulas", "Losses", "Statistics"],
        ["Montage"] = [.. Below, "Composition", "Formulas", "Losses"],
        ["Production"] = [.. Below, "Composition", "Formulas", "Losses"],
        ["Physics"] = [.. Below, "Composition", "Formulas", "Losses", "Statistics"],
        ["Costing"] = [.. Below, "Composition", "Formulas", "Losses", "Physics"],
        ["Trials"] = [.. Below, "Formulas", "Statistics"],
        ["Tasting"] = [.. Below, "Formulas", "Statistics"],
        ["Desserts"] = [.. Below, "Composition", "Formulas", "Losses", "Labels", "Costing", "Production", "Physics", "Montage", "Trials", "Tasting", "Statistics"],
        ["Verification"] = [.. Below, "Composition", "Formulas", "Losses", "Labels", "Costing", "Production", "Physics", "Montage", "Trials", "Tasting", "Statistics"],
    };

    private static readonly Dictionary<string, string[]> Projects = new()
    {
        ["Tamis.Statistics"] = [], ["Tamis"] = ["Tamis.Statistics"], ["Tamis.Views"] = ["Tamis"], ["Tamis.Notebooks"] = ["Tamis.Views"], ["Tamis.App"] = ["Tamis.Notebooks"],
    };

    private static string Source => Path.Combine(KitFolder.DataRoot(), "..", "src");

    [Fact]
    public void Rooms_NameOnlyRoomsBelow()
    {
        var library = Path.Combine(Source, "Tamis");
        var violations =
            from room in RoomsOf(library)
            from file in Directory.EnumerateFiles(Path.Combine(library, room), "*.cs", SearchOption.AllDirectories)
            from Match found in Regex.Matches(File.ReadAllText(file), @"\bTamis\.(?<room>[A-Z][a-z]+)\b")
            let other = found.Groups["room"].Value
            where other != room && Allowed.ContainsKey(other) | other == "Statistics" && !Allowed[room].Contains(other)
            select $"{Path.GetRelativePath(library, file)} names Tamis.{other}; {room} may name {string.Join(", ", Allowed[room])}.";
        Assert.Empty(violations.Distinct());
    }

    [Fact]
    public void Rooms_AllStandInThePicture() => Assert.Empty(RoomsOf(Path.Combine(Source, "Tamis")).Except(Allowed.Keys));

    [Fact]
    public void RootOfTheLibrary_NamesNoRoom()
    {
        var violations =
            from file in Directory.EnumerateFiles(Path.Combine(Source, "Tamis"), "*.cs")
            from room in Allowed.Keys
            where Regex.IsMatch(File.ReadAllText(file), $@"\bTamis\.{room}\b")
            select $"{Path.GetFileName(file)} names Tamis.{room}.";
        Assert.Empty(violations);
    }

    [Fact]
    public void Projects_ReferenceTheProjectBelowOnly()
    {
        foreach (var (project, below) in Projects)
        {
            var file = XDocument.Load(Path.Combine(Source, project, project + ".csproj"));
            var referenced = file.Descendants("ProjectReference").Select(each => Path.GetFileNameWithoutExtension(each.Attribute("Include")!.Value.Replace('\\', '/')));
            Assert.Equal(below, referenced);
        }
    }

    [Fact]
    public void KernelOfTheNotebooks_IsNamedInOneProjectOnly()
    {
        var violations =
            from file in Directory.EnumerateFiles(Source, "*.cs", SearchOption.AllDirectories)
            let path = Path.GetRelativePath(Source, file)
            where !path.StartsWith("Tamis.Notebooks" + Path.DirectorySeparatorChar, StringComparison.Ordinal) && !path.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal)
            // The launcher of the Jupyter kernel names the tool that it starts, and nothing of its library.
            where !path.StartsWith(Path.Combine("Tamis.App", "Jupyter"), StringComparison.Ordinal)
            where File.ReadAllText(file).Contains("Microsoft.DotNet.Interactive", StringComparison.Ordinal)
            select path;
        Assert.Empty(violations);
    }

    private static IEnumerable<string> RoomsOf(string library) =>
        Directory.EnumerateDirectories(library).Select(folder => Path.GetFileName(folder)).Where(name => name is not ("bin" or "obj" or "Properties"));
}
