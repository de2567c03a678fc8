"""Every letter symbol of a rating: as it is printed, its unit, and what it means in words.

A rating is made and looked up by a constant of this table, so that a name that does not exist fails at import. Two
quantities may be printed alike (In of a fuse, In of a surge protective device); they are two constants. Words after
IEC 60050 and IEC 60364, of the National Electrical Code where only that code has the quantity.
"""

from __future__ import annotations

from enum import Enum

from sld.quantity import LetterSymbol
from sld.words import phrase

__all__ = ["POWER_BY_STATUS", "Symbol", "Word"]


class Symbol(LetterSymbol):
    """The letter symbols by part of the system: printed form, unit, meaning."""

    # cells, modules and strings
    TC_MAX = "Tc,max", "°C", phrase("highest cell temperature")
    ALPHA = "α", "%/K", phrase("temperature coefficient of the short-circuit current")
    BETA = "β", "%/K", phrase("temperature coefficient of the open-circuit voltage")
    KAPPA = "κ", "%/K", phrase("temperature coefficient of the voltage at the maximum power point")
    IDEALITY = "a", "V", phrase("modified ideality factor of the single-diode model")
    ISC_D = "Isc,d", "A", phrase("design short-circuit current of a string")
    PSTRING = "Pstring", "W", phrase("rated power of a string at STC")
    UOC_MAX = "Uoc,max", "V", phrase("highest open-circuit voltage of the string at the lowest temperature")
    UOC_TOL = "Uoc,tol", "V", phrase("highest open-circuit voltage with the tolerance of the modules")
    UOC_HOT = "Uoc,hot", "V", phrase("open-circuit voltage of the string at the highest cell temperature")
    UOC_MODEL = "Uoc,model", "V", phrase("highest open-circuit voltage of the string by the single-diode model")
    UOC_MODEL_STC = "Uoc,model STC", "V", phrase("open-circuit voltage of the string at STC by the single-diode model")
    UMPP_MIN = (
        "Umpp,min",
        "V",
        phrase("lowest voltage of the string at the maximum power point, cells at their hottest"),
    )
    UMPP_MAX = (
        "Umpp,max",
        "V",
        phrase("highest voltage of the string at the maximum power point, at the lowest temperature"),
    )
    UMPP_INV = "Umpp,inv", "V", phrase("lowest voltage at the maximum power point that reaches the inverter")
    NUNITS = "n,units", "", phrase("power optimisers in a string")
    UOC_UNIT = "Uoc,unit", "V", phrase("highest voltage at the input of a power optimiser")
    NMAX = "Nmax", "", phrase("largest number of modules in series")
    NMIN = "Nmin", "", phrase("smallest number of modules in series")

    # inputs of the inverters
    UDC_MAX = "Udc,max", "V", phrase("maximum DC voltage of the inverter")
    IMPP = "Impp", "A", phrase("current of the input at the maximum power point")
    IMPP_LIMIT = "Impp,limit", "A", phrase("maximum operating current of the input")
    ISC = "Isc", "A", phrase("short-circuit current of the strings of the input")
    ISC_MAX = "Isc,max", "A", phrase("maximum short-circuit current of the strings of the input")
    ISC_LIMIT = "Isc,limit", "A", phrase("maximum short-circuit current that the input withstands")
    ISC_STRING = "Isc,string", "A", phrase("maximum short-circuit current of one string")
    ITERMINAL = "Iterminal", "A", phrase("largest current of one pair of terminals")
    ITERMINAL_LIMIT = "Iterminal,limit", "A", phrase("maximum current of one pair of terminals")
    IREV = "Irev", "A", phrase("maximum reverse current of a string")
    PDC_BY_PAC = "Pdc/Pac", "", phrase("ratio of the rated DC power to the rated AC power")

    # string fuses, array fuses and other devices of the DC side
    IREV_TEST = "Irev,test", "A", phrase("reverse current that decides on string fuses")
    IREV_LIMIT = "Irev,limit", "A", phrase("reverse current that a module withstands without a string fuse")
    OCPR = "b·OCPR", "A", phrase("maximum overcurrent protection rating of the module times the profile's factor")
    NP_MAX = "Np,max", "", phrase("largest number of strings in parallel without string fuses")
    NP_UNFUSED = (
        "Np,unfused",
        "",
        phrase("largest number of strings in parallel that the module allows without string fuses"),
    )
    IN_STRING = "In,string", "A", phrase("rated current chosen for the string fuses")
    IN_ARRAY = "In,array", "A", phrase("rated current chosen for the array fuse")
    IN_ARRAY_MIN = "In,array,min", "A", phrase("least rated current of the array fuse")
    IN_ARRAY_MAX = "In,array,max", "A", phrase("largest rated current of the array fuse")
    IN_HOT = "In,hot", "A", phrase("current that a fuse link carries at the temperature in its enclosure")
    ICARRY = "Icarry", "A", phrase("current that a string fuse carries without opening")
    IF = "If", "A", phrase("conventional fusing current")
    IK_DC = "Ik,dc", "kA", phrase("prospective short-circuit current on the DC side")
    I_THROUGH = "I,through", "A", phrase("greatest current that an inverter feeds through from the network")
    IK_ISLAND = "Ik,island", "A", phrase("short-circuit current of a source while the network is away")
    I_ISLAND = "I,island", "A", phrase("current of the loads that are fed while the network is away")
    I_ISLAND_MAX = "I,island,max", "A", phrase("current that the sources feed while the network is away")
    L_UNPROTECTED = "Lup", "m", phrase("cable between the battery and its overcurrent protection")
    L_UNPROTECTED_MAX = "Lup,max", "m", phrase("longest cable between the battery and its overcurrent protection")
    UN = "Un", "V", phrase("rated voltage")
    UN_MIN = "Un,min", "V", phrase("least rated voltage")
    UE = "Ue", "V", phrase("rated operational voltage")
    UE_MIN = "Ue,min", "V", phrase("least rated operational voltage")
    IE = "Ie", "A", phrase("rated operational current")
    IE_MIN = "Ie,min", "A", phrase("least rated operational current")
    RALARM = "Ralarm", "kΩ", phrase("insulation resistance at which the monitor gives an alarm")

    # earth, insulation and leakage of the array
    UTEST = "Utest", "V", phrase("test voltage of the insulation resistance")
    PGROUP = "Pgroup", "kWp", phrase("greatest power of strings whose insulation is tested together")
    RISO_MIN = "Riso,min", "MΩ", phrase("least insulation resistance at the test")
    RISO_START = (
        "Riso,start",
        "kΩ",
        phrase("least insulation resistance before the inverter starts, by leakage current"),
    )
    RISO_ARRAY = (
        "Riso,array",
        "kΩ",
        phrase("least insulation resistance before the inverter starts, by power of the array"),
    )
    RISO_INVERTER = "Riso,inverter", "kΩ", phrase("insulation resistance below which the inverter does not start")
    ILEAK_ARRAY = "Ileak,array", "mA", phrase("leakage current of the array to earth")
    IDN_MONITOR = "IΔ,monitor", "mA", phrase("largest continuous residual current at which the inverter disconnects")
    IDN_INVERTER = "IΔ,inverter", "mA", phrase("continuous residual current at which the inverter disconnects")
    IN_FE = "In,FE", "A", phrase("rated current of the device in the functional earthing conductor")
    IN_FE_MAX = "In,FE,max", "A", phrase("largest rated current of the device in the functional earthing conductor")

    # currents of the AC side
    IB = "Ib", "A", phrase("design current")
    IB_LOW = "Ib,low", "A", phrase("current of the inverter at the lowest voltage of the supply")
    IB_BY_IN = "Ib/In", "%", phrase("design current as a share of the rated current")
    IB_BY_RDF = "Ib/RDF", "A", phrase("design current divided by the rated diversity factor of the assembly")
    IMAX_125 = "1.25 Imax", "A", phrase("125 % of the greatest continuous current")
    IEXPORT = "Iexport", "A", phrase("current exported by all generators, most loaded line")
    IEXPORT_LIMIT = "Iexport,limit", "A", phrase("export current at the feed-in limit, most loaded line")
    IIMPORT = "Iimport", "A", phrase("current drawn by all loads, most loaded line")
    I_NEUTRAL = "IN", "A", phrase("current in the neutral conductor")
    IRISE = "Irise", "A", phrase("single-phase current that stands for the unequally loaded lines in the voltage rise")
    IRISE_LINES = "Irise,lines", "A", phrase("three-phase current with the greatest voltage rise between two lines")

    # protective and switching devices
    IN = "In", "A", phrase("rated current")
    IN_MIN = "In,min", "A", phrase("least rated current")
    IN_MAX = "In,max", "A", phrase("largest rated current")
    IN_LARGEST = "In,largest", "A", phrase("largest rated current of the protective device of a cable")
    IN_ALLOWED = "In,allowed", "A", phrase("largest rating of the overcurrent device that the conductor allows")
    I2 = "I2", "A", phrase("conventional operating current")
    INF = "Inf", "A", phrase("conventional non-operating current")
    IZ_145 = "1.45 Iz", "A", phrase("145 % of the current-carrying capacity")
    ICN = "Icn", "kA", phrase("rated breaking capacity")
    ICU = "Icu", "kA", phrase("rated ultimate short-circuit breaking capacity")
    ICS = "Ics", "kA", phrase("rated service short-circuit breaking capacity")
    IA = "Ia", "A", phrase("operating current of the protective device within the time allowed")
    IR = "Ir", "A", phrase("current setting of the overload release")
    IA_EARTH = "Ia,g", "A", phrase("current that is sure to trip the earth-fault release within the time allowed")
    I_HOLD = "I,hold", "A", phrase("greatest current that the device holds without opening")
    IS = "Is", "A", phrase("selectivity limit current")
    IDN = "IΔn", "mA", phrase("rated residual operating current")
    IDN_LEAST = "IΔn,least", "mA", phrase("least rated residual operating current by the leakage currents")
    IDC = "IΔdc", "mA", phrase("smooth direct residual current of all converters behind a device")
    IDN_RATIO = "IΔn ratio", "", phrase("ratio of the rated residual operating currents of two devices in series")
    I2T = "I²t", "A²s", phrase("let-through energy of the protective device")
    I2T_MELT = "I²t,melt", "A²s", phrase("pre-arcing energy of the fuse")

    # cables
    CORES = "cores", "", phrase("number of cores")
    CORES_MIN = "cores,min", "", phrase("least number of cores")
    S = "S", "mm²", phrase("cross-sectional area")
    S_MIN = "S,min", "mm²", phrase("least cross-sectional area")
    S_LEAST = "S,least", "mm²", phrase("least cross-sectional area ahead of the service disconnect")
    S_CURRENT = "S,current", "mm²", phrase("cross-sectional area that the current alone needs")
    S_CARRIES = "S,Iz", "mm²", phrase("smallest cross-sectional area for the current")
    S_THERMAL = "S,thermal", "mm²", phrase("least cross-sectional area by the heat of a fault")
    SPE_THERMAL = "SPE,thermal", "mm²", phrase("least cross-sectional area of the protective conductor by that heat")
    IT = "It", "A", phrase("tabulated current-carrying capacity")
    IT_MIN = "It,min", "A", phrase("least tabulated current-carrying capacity, before corrections")
    IT_NEEDED = "It,needed", "A", phrase("tabulated current-carrying capacity that is needed")
    IZ = "Iz", "A", phrase("current-carrying capacity as installed")
    I_BOTH = "Iboth", "A", phrase("current of a stretch that its protective device and generation feed together")
    IZ_MIN = "Iz,min", "A", phrase("least current-carrying capacity")
    I_CORRECTED = "I,corrected", "A", phrase("ampacity after correction and adjustment")
    I_TERMINAL = "I,terminal", "A", phrase("ampacity at the temperature of the terminals")
    THETA_TERMINAL = "θ,terminal", "°C", phrase("temperature rating of the terminals")
    FILL = "fill", "%", phrase("share of the cross-section of the conduit that is filled")
    FILL_MAX = "fill,max", "%", phrase("largest share of the cross-section of the conduit")
    THETA_LOAD = "θ,load", "°C", phrase("temperature of the conductor at its current")
    CA = "Ca", "", phrase("correction factor for the ambient temperature")
    CD = "Cd", "", phrase("correction factor for the depth of burial")
    CS = "Cs", "", phrase("correction factor for the soil")
    CG = "Cg", "", phrase("reduction factor for grouping")
    CN = "Cn", "", phrase("adjustment factor for the number of current-carrying conductors")
    C_DECLARED = "Cdeclared", "", phrase("correction factor declared by the designer")
    R = "R", "Ω/km", phrase("resistance of the conductor by its length")
    R20 = "R20", "Ω/km", phrase("resistance of the conductor by its length at 20 °C")
    R_THETA = "Rθ", "Ω/km", phrase("resistance of the conductor by its length at its temperature")
    X = "X", "Ω/km", phrase("reactance of the conductor by its length")
    K = "k", "A·√s/mm²", phrase("factor of material and insulation in the adiabatic equation")
    K2S2 = "k²S²", "A²s", phrase("energy that the conductor withstands")

    # voltage drop and voltage rise
    DU_DC_V = "ΔU", "V", phrase("voltage drop of a DC cable")
    DU_DC_CABLE = "Δu", "%", phrase("voltage drop of a DC cable")
    DU_DC = "Δu,dc", "%", phrase("greatest voltage drop from the strings to the input")
    DU_DROP_V = "ΔU drop", "V", phrase("voltage drop of an AC cable")
    DU_DROP = "Δu drop", "%", phrase("voltage drop of an AC cable")
    DU_RISE_V = "ΔU rise", "V", phrase("voltage rise of an AC cable")
    DU_RISE = "Δu rise", "%", phrase("voltage rise of an AC cable")
    DU_SUM = "Δu sum", "%", phrase("sum of the voltage rises on the way to the inverter")
    DU_AC = "Δu,ac", "%", phrase("voltage rise from the supply to the inverter")
    DU_LIMIT = "Δu,limit", "%", phrase("limit of the voltage rise")
    UINVERTER = "Uinverter", "V", phrase("voltage at the inverter at the highest voltage of the supply")
    LMAX_CABLE = "Lmax", "m", phrase("length of the cable at which the limit of the voltage rise is met")

    # supply, boards, transformers and meters
    IPF = "Ipf", "kA", phrase("prospective fault current of the supply")
    ZE = "Ze", "Ω", phrase("external earth fault loop impedance")
    ZK = "Zk", "Ω", phrase("short-circuit impedance of the supply")
    C_MAX = "cmax", "", phrase("voltage factor for the greatest short-circuit current")
    C_MIN = "cmin", "", phrase("voltage factor for the least short-circuit current")
    KT = "KT", "", phrase("impedance correction factor of the transformer")
    IN_TRANSFORMER = "In,transformer", "A", phrase("rated current of the transformer")
    LSECONDARY = (
        "Lsecondary",
        "m",
        phrase("length from the secondary of the transformer to the first protective device"),
    )
    INA = "InA", "A", phrase("rated current of the assembly")
    INA_LEAST = "InA,least", "A", phrase("least rated current of the assembly")
    IG_125 = "1.25 Ig,largest", "A", phrase("largest 125 % of the sources' currents at the busbar")
    IN_RDF = "RDF·In", "A", phrase("current of an outgoing circuit by the rated diversity factor of the assembly")
    ICW = "Icw", "kA", phrase("rated short-time withstand current")
    INC = "Inc", "kA", phrase("rated conditional short-circuit current of a device")
    ICC = "Icc", "kA", phrase("rated conditional short-circuit current")
    IPK = "Ipk", "kA", phrase("rated peak withstand current")
    IM = "Im", "A", phrase("current to be metered")
    IMAX = "Imax", "A", phrase("maximum current of the meter")
    IPN = "Ipn", "A", phrase("rated primary current of the current transformers")
    ISN = "Isn", "A", phrase("rated secondary current of the current transformers")
    KR = "kr", "", phrase("rated ratio of the current transformers")
    SLEAD = "Slead", "VA", phrase("burden of the leads of the current transformers")
    SN = "Sn", "VA", phrase("rated output of the current transformers")

    # faults and disconnection
    IK_MAX = "Ik,max", "kA", phrase("greatest prospective fault current")
    IK1_MAX = "Ik1,max", "kA", phrase("greatest line-to-earth fault current")
    IK2_MAX = "Ik2,max", "kA", phrase("greatest line-to-line short-circuit current")
    IK3_MAX = "Ik3,max", "kA", phrase("greatest three-phase short-circuit current")
    IK_MIN = "Ik,min", "A", phrase("least short-circuit current between live conductors")
    IK1_MIN = "Ik1,min", "A", phrase("least line-to-earth fault current")
    IK1_MIN_NEUTRAL = "Ik1,min (N)", "A", phrase("least line-to-neutral short-circuit current")
    IK2_MIN = "Ik2,min", "A", phrase("least line-to-line short-circuit current")
    IK3_MIN = "Ik3,min", "A", phrase("least three-phase short-circuit current")
    IP = "ip", "kA", phrase("peak short-circuit current")
    IG_BY_IK = "Ig/Ik", "%", phrase("current of the generators as a share of the fault current of the network")
    ZS = "Zs", "Ω", phrase("earth fault loop impedance")
    ZS_MAX = "Zs,max", "Ω", phrase("largest earth fault loop impedance")
    ZS_MEAS = "Zs,meas", "Ω", phrase("largest earth fault loop impedance to be read on cold conductors")
    T_MAX = "t,max", "s", phrase("longest disconnection time")
    T_RCD = "t,RCD", "s", phrase("longest break time of the residual current device")
    RA_MAX = "RA,max", "Ω", phrase("largest resistance of the earth electrode with its protective conductor")
    UT = "Ut", "V", phrase("touch voltage")

    # earthing and bonding
    SPE = "SPE", "mm²", phrase("cross-sectional area of the protective conductor")
    SPE_MIN = "SPE,min", "mm²", phrase("least cross-sectional area of the protective conductor")
    SPE_LEAK = (
        "SPE,leak",
        "mm²",
        phrase("least cross-sectional area of the protective conductor by the leakage current"),
    )
    SPE_TABLE = "SPE,table", "mm²", phrase("cross-sectional area of the protective conductor by the line conductor")
    SPEN_MIN = "SPEN,min", "mm²", phrase("least cross-sectional area of a combined neutral and protective conductor")
    S_NEUTRAL = "SN", "mm²", phrase("cross-sectional area of the neutral conductor")
    S_NEUTRAL_MIN = "SN,min", "mm²", phrase("least cross-sectional area of the neutral conductor")
    IZ_NEUTRAL = "Iz,N", "A", phrase("current-carrying capacity of the neutral conductor")
    I_NEUTRAL_MAX = "IN,max", "A", phrase("largest current of the neutral conductor, some single-phase units off")
    SE = "SE", "mm²", phrase("cross-sectional area of the earthing conductor")
    SE_BURIED = "SE,buried", "mm²", phrase("least cross-sectional area of a buried earthing conductor")
    SB = "SB", "mm²", phrase("cross-sectional area of the protective bonding conductor")
    SB_FRAME = "SB,frame", "mm²", phrase("cross-sectional area of the bonding conductor of the module frames")

    # surge protection and lightning protection
    UCPV = "Ucpv", "V", phrase("maximum continuous operating voltage for PV")
    UCPV_MIN = "Ucpv,min", "V", phrase("least maximum continuous operating voltage for PV")
    UC = "Uc", "V", phrase("maximum continuous operating voltage")
    UC_MIN = "Uc,min", "V", phrase("least maximum continuous operating voltage by the earthing of the system")
    UC_LEAST = "Uc,least", "V", phrase("least maximum continuous operating voltage for a mode of protection")
    UP = "Up", "kV", phrase("voltage protection level")
    UP_RATING = "Up", "V", phrase("voltage protection rating")
    UP_LEADS = "Up,leads", "kV", phrase("voltage protection level with the voltage along the leads")
    UP_MAX = "Up,max", "kV", phrase("highest voltage protection level")
    UP_LARGEST = "Up,largest", "kV", phrase("highest voltage protection level for the equipment")
    IN_SURGE = "In", "kA", phrase("nominal discharge current")
    IN_SURGE_MIN = "In,min", "kA", phrase("least nominal discharge current")
    IN_SURGE_LEAST = "In,least", "kA", phrase("least nominal discharge current by type of device")
    IIMP = "Iimp", "kA", phrase("impulse discharge current")
    IIMP_MIN = "Iimp,min", "kA", phrase("least impulse discharge current")
    IIMP_LEAST = "Iimp,least", "kA", phrase("least impulse discharge current by lightning protection level")
    ISCPV = "Iscpv", "A", phrase("short-circuit current rating for PV")
    ISCPV_MIN = "Iscpv,min", "A", phrase("least short-circuit current rating for PV")
    SPD_TYPE = "type", "", phrase("least type of the surge protective device at the origin")
    CRL = "CRL", "", phrase("calculated risk level of overvoltages by lightning")
    LCRIT = "Lcrit", "m", phrase("critical length of the DC route")
    LROUTE = "Lroute", "m", phrase("length of the DC route")
    L_PROTECTED = "Lspd", "m", phrase("length of cable that one surge protective device protects")
    L_MODULES = "Lmodules", "m", phrase("cable between the modules and the nearest DC surge protective device")
    L_INVERTER = "Linverter", "m", phrase("cable between the inverter and the nearest DC surge protective device")
    L_AC_SURGE = "LSPD", "m", phrase("cable between the inverter and the nearest AC surge protective device")
    SEPARATION = "s", "m", phrase("separation distance")
    SEPARATION_GIVEN = "s,given", "m", phrase("distance that is kept from the lightning protection system")

    # data lines
    UNIT_LOADS = "Σ UL", "UL", phrase("sum of the unit loads of the bus")
    L_BUS = "L", "m", phrase("length of the bus")
    LMAX_BUS = "Lmax", "m", phrase("greatest length of the bus at its data rate")
    T_POLL = "tpoll", "s", phrase("time to ask all devices of the bus once")

    # sums for the whole system
    N = "N", "", phrase("number of modules")
    NSTRINGS = "Nstrings", "", phrase("number of strings")
    PDC = "Pdc", "W", phrase("rated DC power at STC")
    PDC_EXISTING = "Pdc existing", "W", phrase("rated DC power at STC of what exists")
    PDC_NEW = "Pdc new", "W", phrase("rated DC power at STC of what is new")
    PDC_FUTURE = "Pdc future", "W", phrase("rated DC power at STC of what is planned")
    PAC = "Pac", "W", phrase("rated AC power")
    PAC_EXISTING = "Pac existing", "W", phrase("rated AC power of what exists")
    PAC_NEW = "Pac new", "W", phrase("rated AC power of what is new")
    PAC_FUTURE = "Pac future", "W", phrase("rated AC power of what is planned")
    SAC = "Sac", "VA", phrase("highest apparent power of inverters and battery converters")
    DS_LINE = "ΔSline", "VA", phrase("difference of apparent power between the most and the least loaded line")
    ILINE = "Iline", "A", phrase("current of the most loaded line at the nominal voltage, as it is notified")
    SLINE = "Sline", "VA", phrase("apparent power of the most loaded line")
    PSOURCES = "Psources", "W", phrase("rated AC power of inverters and battery converters")
    IFEED_LIMIT = "Ifeed,limit", "A", phrase("current of a line at the feed-in limit")
    PFEED = "Pfeed", "W", phrase("highest power fed in")
    PFEED_LINE = "Pfeed,line", "W", phrase("highest power fed into one line")
    S1_MAX = "S1,max", "VA", phrase("apparent power of the largest single-phase unit")
    S1_SUM = "S1,sum", "VA", phrase("apparent power of all single-phase units")


POWER_BY_STATUS = {
    "existing": (Symbol.PDC_EXISTING, Symbol.PAC_EXISTING),
    "new": (Symbol.PDC_NEW, Symbol.PAC_NEW),
    "future": (Symbol.PDC_FUTURE, Symbol.PAC_FUTURE),
}
"""The powers on the DC and the AC side of what exists, is new and is planned."""


class Word(Enum):
    """Results that are words, not numbers."""

    ARRAY_FUSE = phrase("array fuse")
    CATEGORY = phrase("category")
    CURVE = phrase("curve")
    NO_SELECTIVITY = phrase("no selectivity")
    RCD_TYPE = phrase("RCD type")
    SPD_TYPE = phrase("SPD type")
    STRING_FUSES = phrase("string fuses")
    WINDOW = phrase("window")
