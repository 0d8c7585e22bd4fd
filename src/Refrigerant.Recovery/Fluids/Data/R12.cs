using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>R-12, dichlorodifluoromethane. The constants are those of the publication in <see cref="PureFluidData.Source"/>.</summary>
internal static class R12
{
    public static PureFluidData Create() => new()
    {
        Designation = "R-12",
        Name = "dichlorodifluoromethane",
        CasNumber = "75-71-8",
        Source = "Volker Marx and Andreas Pruss and Wolfgang Wagner, (1992), VDI Verlag, vol. 19",
        MolarMass = 0.120913,
        GasConstant = 8.314471,
        ReducingTemperature = 385.12,
        ReducingMolarDensity = 4672.781255944357,
        CriticalTemperature = 385.12,
        CriticalPressure = 4136100.000000001,
        CriticalMolarDensity = 4672.781255944357,
        AcentricFactor = 0.1794783173435512,
        MinimumTemperature = 116.099,
        MaximumTemperature = 525,
        MaximumPressure = 200000000,
        IdealGas = new IdealHelmholtz(
            logTau: 3.00361975,
            tauLogTau: 0,
            powers: new double[0, 2],
            planckEinstein: new double[,]
            {
                { 3.16062357, 3.72204562 },
                { 0.371258136, 6.30985083 },
                { 3.56226039, 1.78037889 },
                { 2.12152336, 1.07087607 },
            }),
        Residual = new ResidualTerms
        {
            Power = new double[,]
            {
                { 2.075343402, 1, 0.5, 0 },
                { -2.962525996, 1, 1, 0 },
                { 0.01001589616, 1, 2, 0 },
                { 0.01781347612, 2, 2.5, 0 },
                { 0.02556929157, 4, -0.5, 0 },
                { 0.002352142637, 6, 0, 0 },
                { -8.495553314E-05, 8, 0, 0 },
                { -0.01535945599, 1, -0.5, 1 },
                { -0.2108816776, 1, 1.5, 1 },
                { -0.01654228806, 5, 2.5, 1 },
                { -0.0118131613, 7, -0.5, 1 },
                { -4.16029583E-05, 12, 0, 1 },
                { 2.784861664E-05, 12, 0.5, 1 },
                { 1.618686433E-06, 14, -0.5, 1 },
                { -0.1064614686, 1, 4, 2 },
                { 0.0009369665207, 9, 4, 2 },
                { 0.02590095447, 1, 2, 3 },
                { -0.04347025025, 1, 4, 3 },
                { 0.1012308449, 3, 12, 3 },
                { -0.1100003438, 3, 14, 3 },
                { -0.003361012009, 5, 0, 3 },
                { 0.0003789190008, 9, 14, 4 },
            },
        },
        SaturationViscosity = new double[,]
        {
            { 201, 0.00060585, 7.8835E-06 },
            { 216.69, 0.00048116, 8.4987E-06 },
            { 232.38, 0.00039258, 9.106E-06 },
            { 248.06, 0.00032641, 9.7038E-06 },
            { 263.75, 0.00027478, 1.0295E-05 },
            { 279.44, 0.00023305, 1.0889E-05 },
            { 295.13, 0.00019824, 1.1501E-05 },
            { 310.81, 0.00016836, 1.2166E-05 },
            { 326.5, 0.00014194, 1.2946E-05 },
            { 342.19, 0.00011786, 1.3969E-05 },
            { 357.88, 9.4839E-05, 1.5537E-05 },
            { 373.57, 7.0471E-05, 1.8727E-05 },
        },
    };
}
