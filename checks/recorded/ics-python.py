"""What two Python parsers say of calendar files: icalendar 4.0.3 and vobject 0.9.6.1 of Debian 12.

Record: python3 checks/recorded/ics-python.py checks/recorded/ics.ics > checks/recorded/ics-python.json
(apt-get install python3-icalendar python3-vobject). The file is written by checks/calendar/recorded.test.ts with
CALENDAR_OUT=checks/recorded/ics.ics set.
"""
import json
import sys
from datetime import datetime, timezone

import icalendar
import vobject
from dateutil.rrule import rrulestr


def instant(value):
    if isinstance(value, datetime):
        if value.tzinfo is None:
            return value.isoformat()
        return value.astimezone(timezone.utc).strftime("%Y-%m-%dT%H:%M:%SZ")
    return value.isoformat()


def by_icalendar(text):
    calendar = icalendar.Calendar.from_ical(text)
    events = []
    for event in calendar.walk("VEVENT"):
        start = event["DTSTART"].dt
        rule = event.get("RRULE")
        days = [start]
        if rule is not None:
            # The rule is walked on the wall clock; zones are put on afterwards.
            naive = start.replace(tzinfo=None) if isinstance(start, datetime) else datetime(start.year, start.month, start.day)
            every = int(rule["INTERVAL"][0])
            days = [naive + (rrulestr(f"FREQ=DAILY;INTERVAL={every};COUNT=6", dtstart=naive)[i] - naive) for i in range(6)]
            if not isinstance(start, datetime):
                days = [day.date() for day in days]
            elif start.tzinfo is not None:
                zone = start.tzinfo
                days = [zone.localize(day) if hasattr(zone, "localize") else day.replace(tzinfo=zone) for day in days]
        events.append(
            {
                "uid": str(event["UID"]),
                "sequence": int(event["SEQUENCE"]),
                "status": str(event["STATUS"]),
                "summary": str(event["SUMMARY"]),
                "description": str(event["DESCRIPTION"]),
                "days": [instant(day) for day in days],
            }
        )
    return events


def by_vobject(text):
    events = []
    for event in vobject.readOne(text).vevent_list:
        days = list(event.rruleset)[:6] if event.rruleset is not None else [event.dtstart.value]
        events.append(
            {
                "uid": event.uid.value,
                "sequence": int(event.sequence.value),
                "status": event.status.value,
                "summary": event.summary.value,
                "description": event.description.value,
                "start": instant(event.dtstart.value),
                "walls": [day.strftime("%Y-%m-%dT%H:%M") for day in days],
            }
        )
    return events


with open(sys.argv[1], newline="", encoding="utf-8") as file:
    text = file.read()
json.dump({"icalendar": by_icalendar(text), "vobject": by_vobject(text)}, sys.stdout, indent=1, ensure_ascii=False)
print()
