using System.CommandLine;
using System.Text;
using Tamis.App.Pages;

// A narrow no-break space and a real minus must survive on every console.
Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);

var root = new RootCommand("Tamis: from a folder of sheets to finished pages. check looks at my files, verify at the kit.")
{
    PagesCommand.Create(),
};
return await root.Parse(args).InvokeAsync().ConfigureAwait(false);
