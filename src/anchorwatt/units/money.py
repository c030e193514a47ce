"""Amounts of money in one currency. Nothing here converts between currencies."""

from __future__ import annotations

import re
from dataclasses import dataclass
from decimal import Decimal

from anchorwatt.units.refusal import Refused, name_of_kind, quoted

# Codes of ISO 4217 in use for money that people pay with, written down from memory.
_CODES = (
    "AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BHD BIF BMD BND BOB BRL BSD BTN BWP BYN BZD CAD "
    "CDF CHF CLP CNY COP CRC CUP CVE CZK DJF DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD "
    "GNF GTQ GYD HKD HNL HTG HUF IDR ILS INR IQD IRR ISK JMD JOD JPY KES KGS KHR KMF KPW KRW KWD KYD "
    "KZT LAK LBP LKR LRD LSL LYD MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MYR MZN NAD NGN NIO "
    "NOK NPR NZD OMR PAB PEN PGK PHP PKR PLN PYG QAR RON RSD RUB RWF SAR SBD SCR SDG SEK SGD SHP SLE "
    "SOS SRD SSP STN SYP SZL THB TJS TMT TND TOP TRY TTD TWD TZS UAH UGX USD UYU UZS VED VES VND VUV "
    "WST XAF XCD XOF XPF YER ZAR ZMW "
)
CURRENCIES = frozenset(_CODES.split())
MONEY = "(?:[0-9]{1,3}(?:[ \u00a0\u2009\u202f][0-9]{3})+|[0-9]{1,12})(?:\\.[0-9]{1,2})? ?[A-Z]{3}"
ALLOWED = 'an amount and a currency code of ISO 4217, such as "65 000 USD"'


@dataclass(frozen=True)
class Money:
    """An amount in a currency.

    Example
    -------
    >>> str(Money.parse("65 000 USD") + Money.parse("450.50 USD"))
    '65 450.50 USD'
    """

    amount: Decimal
    currency: str  # code of ISO 4217

    @classmethod
    def parse(cls, text: str) -> Money:
        """Read an amount and its currency code.

        Raises
        ------
        BadQuantity
            The text is not that; the message says what was found and what is allowed.
        """
        if not isinstance(text, str):
            raise Refused(f"{name_of_kind(text)} without a currency", ALLOWED)
        tidy = text.strip()
        if not re.fullmatch(MONEY, tidy):
            comma = re.search("[0-9],[0-9]", tidy[:60])
            why = ", where a comma may mean thousands or decimals" if comma else ""
            raise Refused(f"{quoted(text)}{why}", ALLOWED)
        currency = tidy[-3:]
        if currency not in CURRENCIES:
            raise Refused(f"{quoted(text)}, where {currency} is no currency", ALLOWED)
        return cls(Decimal(re.sub("[^0-9.]", "", tidy[:-3])), currency)

    def __add__(self, other: Money) -> Money:
        self._same(other)
        return Money(self.amount + other.amount, self.currency)

    def __sub__(self, other: Money) -> Money:
        self._same(other)
        return Money(self.amount - other.amount, self.currency)

    def __mul__(self, count: int | Decimal) -> Money:
        return Money(self.amount * count, self.currency)

    def __lt__(self, other: Money) -> bool:
        self._same(other)
        return self.amount < other.amount

    def __le__(self, other: Money) -> bool:
        self._same(other)
        return self.amount <= other.amount

    def __str__(self) -> str:
        text = f"{self.amount:,f}".replace(",", " ")
        return f"{text} {self.currency}"

    def _same(self, other: Money) -> None:
        if self.currency != other.currency:
            raise ValueError(f"cannot set {self.currency} against {other.currency}")
