using System.CommandLine;
using System.Text;
using Tamis.App.Audit;
using Tamis.App.Check;
using Tamis.App.Import;
using Tamis.App.Jupyter;
using Tamis.App.Label;
using Tamis.App.New;
using Tamis.App.Pages;
using Tamis.App.Paper;
using Tamis.App.Plan;
using Tamis.App.Tasting;
using Tamis.App.Terms;
using Tamis.App.Verify;

namespace Tamis.App;

/// <summary>The commands of the program.</summary>
internal static class CommandLine
{
    /// <summary>Runs the command that the arguments name.</summary>
    /// <returns>0 if all went well.</returns>
    public static Task<int> RunAsync(string[] arguments)
    {
        // A narrow no-break space and a real minus must survive on every console.
        Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
        return new RootCommand("Tamis: from a folder of sheets to finished pages. Two commands look for mistakes: check looks at my files, verify at the kit.")
        {
            PagesCommand.Create(),
            CheckCommand.Create(),
            NewCommand.Create(),
            ImportCommand.Create(),
            AuditCommand.Create(),
            PlanCommand.Create(),
            PaperCommand.Create(),
            TastingCommand.Create(),
            LabelCommand.Create(),
            LabelDrawingCommand.Create(),
            SignCommand.Create(),
            TermsCommand.Create(),
            VerifyCommand.Create(),
            JupyterCommand.Create(),
        }.Parse(arguments).InvokeAsync();
    }
}
