namespace Tamis.Physics;

/// <summary>A function that mass has in a mixture. Each gram has one: fat-free solids of milk, cocoa and egg hold their own protein, fibre and ash.</summary>
public enum BalancePart
{
    /// <summary>Water.</summary>
    Water,
    /// <summary>Sucrose.</summary>
    Sucrose,
    /// <summary>Glucose (dextrose).</summary>
    Glucose,
    /// <summary>Fructose.</summary>
    Fructose,
    /// <summary>Galactose.</summary>
    Galactose,
    /// <summary>Lactose, apart from the other milk solids.</summary>
    Lactose,
    /// <summary>Maltose.</summary>
    Maltose,
    /// <summary>Trehalose.</summary>
    Trehalose,
    /// <summary>Sugars of which only the total is known.</summary>
    UnsplitSugars,
    /// <summary>Saccharides of three units and more: what is not sugar in a glucose syrup.</summary>
    HigherSaccharides,
    /// <summary>Sorbitol.</summary>
    Sorbitol,
    /// <summary>Glycerol.</summary>
    Glycerol,
    /// <summary>Erythritol.</summary>
    Erythritol,
    /// <summary>Xylitol.</summary>
    Xylitol,
    /// <summary>Maltitol.</summary>
    Maltitol,
    /// <summary>Mannitol.</summary>
    Mannitol,
    /// <summary>Polyols of which only the total is known.</summary>
    UnsplitPolyols,
    /// <summary>Milk fat.</summary>
    MilkFat,
    /// <summary>Cocoa butter.</summary>
    CocoaButter,
    /// <summary>Fat of nuts and seeds.</summary>
    NutFat,
    /// <summary>Fat of egg yolk.</summary>
    EggFat,
    /// <summary>Any other fat: oils, shortening, the fat of flour and fruit.</summary>
    OtherFat,
    /// <summary>Fat of which only the total is known.</summary>
    UnsplitFat,
    /// <summary>Milk solids that are neither fat nor lactose.</summary>
    MilkSolids,
    /// <summary>Fat-free cocoa solids.</summary>
    CocoaSolids,
    /// <summary>Egg yolk solids without fat and sugar.</summary>
    EggYolkSolids,
    /// <summary>Egg white solids without fat and sugar.</summary>
    EggWhiteSolids,
    /// <summary>Protein that is not in milk, cocoa or egg solids, nor a gelling agent.</summary>
    Protein,
    /// <summary>Starch.</summary>
    Starch,
    /// <summary>Fibre that is not in cocoa solids, nor a gelling agent.</summary>
    Fibre,
    /// <summary>Gelatine, pectin, agar, gums: what is not water, fat or sugar in them.</summary>
    GellingAgents,
    /// <summary>Sodium chloride that was added as such.</summary>
    Salt,
    /// <summary>Ethanol.</summary>
    Alcohol,
    /// <summary>Organic acids that are not in milk, cocoa or egg solids.</summary>
    OrganicAcids,
    /// <summary>Minerals that are neither salt nor in milk, cocoa or egg solids.</summary>
    Ash,
    /// <summary>What no other part accounts for, by difference to the finished mass.</summary>
    Rest,
}
