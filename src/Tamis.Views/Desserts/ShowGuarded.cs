using Tamis.Tables;

namespace Tamis.Views;

public static partial class Show
{
    // A sheet that must be mended first stops what hangs on it and nothing else of the page.
    private static Html Guarded(string trial, string what, Func<Html> show)
    {
        try
        {
            return show();
        }
        catch (TableException error)
        {
            return Notes.LookAt(Html.Of($"{trial} has no {what} yet: {string.Join("; ", error.Problems)}"));
        }
    }
}
