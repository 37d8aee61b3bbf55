using System.CommandLine;
using Tamis.Composition.Import;
using Tamis.Desserts;
using Tamis.Tables;

namespace Tamis.App.Import;

/// <summary>The command <c>import</c>: a published composition table into the kit's own layout.</summary>
internal static class ImportCommand
{
    /// <summary>The command with its options.</summary>
    public static Command Create()
    {
        var layout = new Option<string>("--layout") { Description = $"The publisher’s layout: {string.Join(", ", Importers.All.Keys)}.", Required = true };
        layout.AcceptOnlyFromAmong([.. Importers.All.Keys]);
        var from = new Option<string>("--from") { Description = "The folder with the publisher’s files, as they were downloaded.", Required = true };
        var to = new Option<string>("--to") { Description = "The folder to write; it is not there yet, or empty.", Required = true };
        var with = new Option<string[]>("--with") { Description = "A named conversion of conversions.csv to make for every food that does not state the nutrient itself, such as \"carbohydrate with fibre\"; may be given again." };
        var command = new Command("import", "Bring in a national table: read SR28, Ciqual or FoodData Central files and write them in the kit’s layout, with a report of what was taken, merged, converted and left.") { layout, from, to, with };
        command.SetDeed(arguments => Task.FromResult(Run(arguments.GetRequiredValue(layout), arguments.GetRequiredValue(from), arguments.GetRequiredValue(to), arguments.GetValue(with) ?? [], Console.Out)));
        return command;
    }

    /// <summary>Imports a folder; 1 if anything in it cannot be read, and then nothing is written.</summary>
    /// <param name="layout">The layout's name.</param>
    /// <param name="from">The folder with the publisher's files.</param>
    /// <param name="to">The folder to write.</param>
    /// <param name="conversions">Conversions to make, by name.</param>
    /// <param name="writer">Where to say what was done: a sentence a line.</param>
    public static int Run(string layout, string from, string to, IReadOnlyList<string> conversions, TextWriter writer)
    {
        if (!Directory.Exists(from)) throw new UserProblem($"There is no folder '{from}'; name the one that holds the publisher’s files.");
        try
        {
            var imported = Importers.All[layout](from, ImportCodes.Load(KitFolder.Data("composition")));
            imported = conversions.Aggregate(imported, (made, conversion) => made.With(conversion));
            imported.WriteTo(to);
            foreach (var sentence in imported.Report.Sentences()) writer.WriteLine(sentence);
            writer.WriteLine($"Written to {to}, with this report as {ImportReport.FileName}. In a folder {Store.TableFolder} of a store its foods stand beside those of the kit.");
            return 0;
        }
        catch (KeyNotFoundException unknown)
        {
            throw new UserProblem(unknown.Message);
        }
        catch (TableException bad)
        {
            foreach (var problem in bad.Problems) writer.WriteLine(problem);
            writer.WriteLine($"{bad.Problems.Count} to mend; nothing was written.");
            return 1;
        }
    }
}
